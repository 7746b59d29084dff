/** The name of an input or a result as a reader sees it. */
export const spelt = (named: {
  readonly name: string;
  readonly label?: string | undefined;
}): string => named.label ?? named.name;
