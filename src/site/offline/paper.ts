import tokens from '../../styles/tokens.css?raw';
import { inHex } from './in-hex.ts';

/** What a system paints around a page, or before it is there. */
export const paper = inHex(tokens, 'paper');
