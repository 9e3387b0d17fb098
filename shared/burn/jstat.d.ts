// The library ships no types; only what this room uses of it.
declare module 'jstat' {
    export const jStat: {
        readonly normal: {
            cdf(x: number, mean: number, deviation: number): number;
            inv(p: number, mean: number, deviation: number): number;
        };
        readonly studentt: {
            cdf(x: number, freedom: number): number;
            pdf(x: number, freedom: number): number;
            inv(p: number, freedom: number): number;
        };
        readonly centralF: {
            cdf(x: number, freedom: number, freedomBelow: number): number;
        };
        erf(x: number): number;
    };
    const module: { readonly jStat: typeof jStat };
    export default module;
}
