/** The most bytes of one file a person sends. */
export const fileBytesLimit = 15 * 1024 * 1024;

/** The most pixels a picture may have before it is even decoded. */
export const pixelLimit = 64_000_000;

/** Longest side of a kept picture and of its thumbnail, in pixels. */
export const pictureSide = 2_560;
export const thumbnailSide = 320;
