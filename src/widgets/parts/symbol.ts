/** One sign of a symbol: a letter with its prime and index, a number, or an operator. */
export interface Sign {
  readonly kind: 'letter' | 'number' | 'operator';
  readonly text: string;
  readonly sub?: string;
  readonly prime?: boolean;
}

const GREEK: Readonly<Record<string, string>> = {
  alpha: 'α', beta: 'β', gamma: 'γ', delta: 'δ', varepsilon: 'ε', eta: 'η', theta: 'θ', lambda: 'λ', mu: 'μ', nu: 'ν', rho: 'ρ', sigma: 'σ', tau: 'τ', varphi: 'φ', phi: 'ϕ', psi: 'ψ', ell: 'ℓ', omega: 'ω', Delta: 'Δ', Omega: 'Ω', Phi: 'Φ',
}; // prettier-ignore

/**
 * A field's symbol as signs to set in MathML. Build time only; whole formulas go through KaTeX.
 *
 * Valid: letters, Greek letters, primes, indices, numbers, + − / and parentheses.
 * Throws: Error for anything else, so that a new record cannot lose part of its symbol unseen.
 * @example signsOf("f'_w") // [{ kind: 'letter', text: 'f', sub: 'w', prime: true }]
 */
export const signsOf = (tex: string): Sign[] => {
  const plain = tex
    .replace(/\\text\{([^{}]*)\}/g, '$1')
    .replace(/\\(max|min)\b/g, '$1')
    .replace(/\\mathrm\{([^{}]*)\}/g, '$1')
    .replace(/\\([a-zA-Z]+) ?/g, (all, name: string) => GREEK[name] ?? all);
  const signs: Sign[] = [];
  const sign = /\s*(?:(\p{L})('?)(?:_(?:\{([^{}]*)\}|([\p{L}\d])))?|(\d+)|([-+/()|,]))\s*/uy;
  while (sign.lastIndex < plain.length) {
    const at = sign.lastIndex;
    const [all, letter, prime, long, short, number, operator] = sign.exec(plain) ?? [];
    if (all === undefined)
      throw new Error(
        `The symbol ${tex} cannot be set: “${plain.slice(at)}” is not a letter, number or operator.`,
      );
    if (letter !== undefined)
      signs.push({ kind: 'letter', text: letter, sub: long ?? short ?? '', prime: prime !== '' });
    else if (number !== undefined) signs.push({ kind: 'number', text: number });
    else signs.push({ kind: 'operator', text: operator === '-' ? '−' : (operator ?? '') });
  }
  return signs;
};
