/** Standard acceleration of free fall, in m/s²; exact by definition (CGPM 1901). */
export const G = 9.80665;
