/** Styles are gathered into dist/bench.css by the build. */
declare module '*.css';
