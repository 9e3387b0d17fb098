/** Steps in which depth gauges read, mm, the coarsest first: parts of a millimetre and thousandths of an inch. @commonPractice */
const GAUGE_STEPS = [0.1, 0.05, 0.0254, 0.02, 0.0127, 0.01, 0.005, 0.00254, 0.001];

/** The coarsest step of which all readings are multiples, mm; 0 where none is. */
export function stepOfGauge(depths: readonly number[]): number {
    const isWhole = (step: number) => (depth: number) => Math.abs(depth / step - Math.round(depth / step)) < 1e-4;
    return GAUGE_STEPS.find((step) => depths.every(isWhole(step))) ?? 0;
}
