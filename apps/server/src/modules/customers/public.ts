export { refuseFuture, refuseOutOfLine, type Said } from './meter-points.ts';
