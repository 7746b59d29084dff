/** Printed text; `step` where the last digit is not the step the source rounded to. */
export type PrintedText = string | { readonly text: string; readonly step: string };

export type CheckKind = 'published' | 'derived' | 'common practice, no source' | 'from memory';

/** One value as others printed it, as it stands in shared/checks. See shared/README.md. */
export interface CheckValue {
  readonly id: string;
  /** Inputs by id, as `evaluate` takes them. */
  readonly given: Readonly<Record<string, string>>;
  /** Results by id. */
  readonly printed: Readonly<Record<string, PrintedText>>;
  readonly rounding: 'nearest' | 'truncated';
  readonly source: string | null;
  /** Where in the source; for a derived value, the arithmetic. */
  readonly where: string;
  readonly seen?: 'original' | 'copy' | 'quoted';
  readonly kind: CheckKind;
  readonly verdict: 'agrees' | 'differs';
  /** Room beyond half a step, with its unit; `because` then says why. */
  readonly slack?: string;
  readonly because?: string;
  readonly note?: string;
}

export interface CheckFile {
  readonly formula: string;
  /** For a formula put together from others: their ids. */
  readonly parts: readonly string[];
  readonly values: readonly CheckValue[];
}

interface Name {
  readonly family?: string;
  readonly given?: string;
  readonly literal?: string;
}

/** One entry of the bibliography, CSL-JSON. */
export interface Source {
  readonly id: string;
  readonly type: string;
  readonly title: string;
  readonly author?: readonly Name[];
  readonly publisher?: string;
  readonly 'container-title'?: string;
  readonly issued?: { readonly 'date-parts': readonly (readonly number[])[] };
  readonly URL?: string;
  readonly note?: string;
}
