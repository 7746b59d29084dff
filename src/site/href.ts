import { joinBase } from './join-base.ts';

/**
 * The address of a page or file of this site, under whatever base it was built for.
 *
 * @example href('/glossary/') // '/glossary/', or '/sub/glossary/' under the base '/sub/'
 */
export const href = (address: `/${string}`): string => joinBase(import.meta.env.BASE_URL, address);
