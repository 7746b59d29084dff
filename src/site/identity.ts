/** What the site says about itself, said once. */
export const siteName = 'Sitting by Numbers';
export const siteLine = 'The optics of studio portraits of small children, worked out';

/**
 * Where errors are reported: a repository with an issue form at /issues/new, from SBN_REPOSITORY at
 * build time. Without one the page offers the same text to copy.
 */
export const repository: string | undefined = process.env['SBN_REPOSITORY']?.replace(/\/+$/, '');
