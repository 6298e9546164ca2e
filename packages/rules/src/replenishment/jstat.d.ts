/** What is used of jstat, which comes without types. */
declare module 'jstat' {
  const jstat: {
    readonly jStat: {
      readonly normal: { inv(share: number, mean: number, deviation: number): number };
      readonly beta: { inv(share: number, alpha: number, beta: number): number };
      readonly binomial: { cdf(count: number, trials: number, chance: number): number };
    };
  };
  export default jstat;
}
