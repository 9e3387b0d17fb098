/**
 * Moisture that wood comes to in still air, as a fraction of its oven-dry mass (0.08 for 8 %).
 *
 * Hailwood and Horrobin's sorption with the coefficients of Simpson (USDA FPL-RN-0268, 1973) in
 * degrees Celsius: Wood Handbook, FPL-GTR-190, 2010, Eq. 4-5, tabulated in its Table 4-2.
 *
 * @param temperature degC; the table runs from -1.1 to 132.2
 * @param humidity relative humidity as a ratio, 0 to 1
 * @returns undefined outside of the table's range
 */
export function equilibriumMoisture(temperature: number, humidity: number): number | undefined {
    if (!(temperature >= -1.2 && temperature <= 132.3 && humidity >= 0 && humidity <= 1)) return undefined;
    const t = temperature;
    const w = 349 + 1.29 * t + 0.0135 * t * t;
    const k = 0.805 + 0.000736 * t - 0.00000273 * t * t;
    const k1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
    const k2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
    const kh = k * humidity;
    const first = k1 * kh;
    const second = k1 * k2 * kh * kh;
    return (18 / w) * (kh / (1 - kh) + (first + 2 * second) / (1 + first + second));
}

/**
 * Moisture that wood comes to over a year where it is kept, as a fraction: indoors between a heated room in winter
 * (30 %) and a damp week in summer (60 %), both at 20 degC; outdoors under a
 * roof between a dry summer (20 degC, 55 %) and a wet autumn (8 degC, 85 %).
 * @commonPractice The climates.
 */
export const keptMoisture = {
    indoors: { low: equilibriumMoisture(20, 0.3)!, high: equilibriumMoisture(20, 0.6)! },
    outdoors: { low: equilibriumMoisture(20, 0.55)!, high: equilibriumMoisture(8, 0.85)! },
} as const;
