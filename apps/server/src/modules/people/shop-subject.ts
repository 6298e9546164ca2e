/** The shop profile's record chain has one subject; the profile is one row. */
export const shopSubjectId = '00000000-0000-7000-8000-000000000001';
