/** What is used of jstat, which comes without types. */
declare module 'jstat' {
  const jstat: {
    readonly jStat: {
      readonly normal: { inv(share: number, mean: number, deviation: number): number };
      readonly beta: { inv(share: number, alpha: number, beta: number): number };
    };
  };
  export default jstat;
}
