// What every place that this code runs in has (Node, a browser, its workers) and the language itself lacks.
declare function setTimeout(callback: () => void, milliseconds?: number): unknown;
interface Performance {
    now(): number;
}
declare var performance: Performance;
interface ErrorConstructor {
    /** V8 only; elsewhere it does nothing. */
    stackTraceLimit: number;
}
