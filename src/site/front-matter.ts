/** What a lesson's front matter must keep to: the build insists on it, and so do the tests. */
export const LESSON = { outcomes: 2, minutes: [10, 60] } as const;
