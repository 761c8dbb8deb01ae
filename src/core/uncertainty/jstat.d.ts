declare module 'jstat' {
  interface Distribution {
    cdf(x: number, ...parameters: number[]): number
    pdf(x: number, ...parameters: number[]): number
    inv(p: number, ...parameters: number[]): number
  }
  const module: {
    jStat: { studentt: Distribution; chisquare: Distribution; centralF: Distribution; normal: Distribution }
  }
  export default module
}
