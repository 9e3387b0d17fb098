/** A stock file, as the bundler and the test runner hand it over: its text. */
declare module '*.kerf' {
    const text: string;
    export default text;
}
