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
 * How far the moisture of wood swings over a year indoors, as a fraction: from a heated room in
 * winter (30 %) to a damp week in summer (60 %), at 20 degC. What wood makes of them is
 * `equilibriumMoisture`.
 * @commonPractice The two rooms.
 */
export const indoorSwing = equilibriumMoisture(20, 0.6)! - equilibriumMoisture(20, 0.3)!;
