import type { Interval } from '../quantity/interval';
import type { Quantity } from '../quantity/quantity';
import type { Shop } from '../recipe/shop';
import type { Climate, Step } from '../recipe/step';
import type { Hardening, Laying } from '../recipe/stock';

/** Between these a sheet's own times hold, degC. @commonPractice Sheets state them for 20 to 25 degC. */
const sheetRange = { from: 20, to: 25 } as const;
/** Degrees over which times halve. Seen in two makers' notes on epoxy (10 degC, or 18 degF). */
const halving = 10;
/** A reaction is 1.5 to 2.5 times as fast for 10 degC more, mostly twice (seen in a maker's note on epoxy pot life). */
const fastness = { least: 1.5, usual: 2, most: 2.5 } as const;
/** A thin film of epoxy sets only 1.3 times as slowly for 10 degC less, while its pot life doubles (seen in answers of a maker of epoxy). */
const filmFastness = 1.3;
/** Humidity at which water dries as sheets say. @commonPractice */
const sheetHumidity = 0.5;

/** Factor that a temperature puts on times that a reaction or drying takes: twice as long for 10 degC less. */
export function temperatureFactor(temperature: number): Interval {
    const { from, to } = sheetRange;
    const below = temperature < from ? from - temperature : temperature > to ? to - temperature : 0;
    const [a, b] = [fastness.least ** (below / halving), fastness.most ** (below / halving)];
    return { value: fastness.usual ** (below / halving), low: Math.min(a, b), high: Math.max(a, b) };
}

/**
 * What humidity makes of the time that water takes to dry: evaporation goes with what the air still takes up (Dalton's law of
 * evaporation, from memory); no more than ten times as long.
 */
export function humidityFactor(humidity: number): number {
    return Math.min(10, (1 - sheetHumidity) / Math.max(1e-9, 1 - humidity));
}

/** Factor that the climate of a shop puts on the times of something that hardens in one way. Glue that cools sets sooner in the cold: left as it is. */
export function climateFactor(
    setsBy: Hardening | undefined,
    temperature: number | undefined,
    humidity: number | undefined,
): Interval {
    const warm = setsBy === undefined || setsBy === 'cooling' ? undefined : temperature;
    const { value, low, high } = temperatureFactor(warm ?? sheetRange.from);
    const damp = setsBy === 'water' && humidity !== undefined ? humidityFactor(humidity) : 1;
    return { value: value * damp, low: low * damp, high: high * damp };
}

/** The climate in which what a step lays hardens: its own where it says one, else the shop's. */
export function climateOf(step: Step, shop: Climate | undefined): Climate {
    const { temperature, humidity }: Climate = ('climate' in step ? step.climate : undefined) ?? {};
    const of = { temperature: temperature ?? shop?.temperature, humidity: humidity ?? shop?.humidity };
    return {
        ...(of.temperature === undefined ? {} : { temperature: of.temperature }),
        ...(of.humidity === undefined ? {} : { humidity: of.humidity }),
    };
}

/** The steps with what they lay as it hardens in the climate of the shop, or in their own. */
export function inShopClimate(steps: readonly Step[], shop: Shop | undefined): Step[] {
    return steps.map((step): Step => {
        const climate = climateOf(step, shop);
        switch (step.kind) {
            case 'seal':
                return step.sealer === undefined ? step : { ...step, sealer: corrected(step.sealer, climate) };
            case 'finish':
                return step.coat === undefined ? step : { ...step, coat: corrected(step.coat, climate) };
            case 'fill':
                return step.resin === undefined ? step : { ...step, resin: corrected(step.resin, climate) };
            case 'inlay':
                return step.glue === undefined ? step : { ...step, glue: corrected(step.glue, climate) };
            default:
                return step;
        }
    });
}

const times = ['potLife', 'open', 'clamp', 'dry', 'cure', 'recoat'] as const;

function corrected<Fluid extends Laying & object>(fluid: Fluid, { temperature, humidity }: Climate): Fluid {
    const factor = climateFactor(fluid.setsBy, temperature?.value, humidity?.value);
    if (Math.abs(factor.value - 1) < 0.01) return fluid;
    const known = fluid as { readonly [time in (typeof times)[number]]?: Quantity };
    const changed = Object.fromEntries(
        times.flatMap((key) => {
            const time = known[key];
            const isFilm = fluid.setsBy === 'reaction' && key !== 'potLife' && key !== 'open';
            return time === undefined ? [] : [[key, longer(time, isFilm ? asFilm(factor, temperature?.value) : factor)]];
        }),
    );
    const over = fluid.over.map((each) => (each.after === undefined ? each : { ...each, after: longer(each.after, factor) }));
    return { ...fluid, ...changed, over, ...(temperature === undefined ? {} : { at: temperature.value }) };
}

/** The factor as it is of a thin film, which may harden sooner than the cup does: its lower end is the lesser of the two. */
function asFilm(factor: Interval, temperature: number | undefined): Interval {
    const below = temperature === undefined ? 0 : Math.max(0, sheetRange.from - temperature);
    return { ...factor, low: Math.min(factor.low, filmFastness ** (below / halving)) };
}

/** Its range is the wider of what was written and what is not known of the factor. */
function longer(time: Quantity, { value, low }: Interval): Quantity {
    const usual = time.value * value;
    return { ...time, value: usual, tolerance: Math.max(time.tolerance * value, usual - time.value * low) };
}
