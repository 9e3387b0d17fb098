/** The package declares its types for another entry than the one that works in every place the core runs. */
declare module 'clipper2-wasm/dist/umd/clipper2z.js' {
    const start: (settings: object) => Promise<never>;
    export default start;
}
