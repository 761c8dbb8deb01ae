/** Significant digits that agree: −log₁₀ of the relative difference; 15 or more is all a double can hold. */
export const matchingDigits = (computed: number, certified: number): number =>
  computed === certified ? 15 : -Math.log10(Math.abs(computed - certified) / Math.abs(certified))
