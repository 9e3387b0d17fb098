import { type Colour, darknessOf } from '../style/colour';
import type { Shading, ShadingStop } from './shading';

/** Steps of a channel on a screen. */
const steps = 255;
/** No rounding of the channels changes a darkness by more. */
const mostOff = 0.5 / steps;

/**
 * An opaque shading whose edge at a threshold lies where a screen has it: each channel of a colour is one of 256 there, so that a long
 * gradient that hardly gets darker turns up to half a step earlier or later than its darkness does. Where the steps of three channels
 * cross the threshold to and fro, the edge lies so that as much of the way is dark. What is seen through it is left as it is: there a
 * screen rounds the mix, which is no line along the paint. Both renderers that art was held against do so.
 */
export function asShown(shading: Shading, threshold: number): Shading {
    const { stops } = shading;
    if (stops.some(({ opacity, colour }) => opacity < 1 || colour === undefined)) return shading;
    const shown = stops.flatMap((stop, i): ShadingStop[] => {
        const next = stops[i + 1];
        const edge = next === undefined ? undefined : edgeBetween(stop, next, threshold);
        return edge === undefined ? [stop] : [stop, edge];
    });
    return shown.length === stops.length ? shading : { ...shading, stops: shown };
}

/** Where the colours between two stops pass the threshold; undefined where they do not. */
function edgeBetween(from: ShadingStop, to: ShadingStop, threshold: number): ShadingStop | undefined {
    const rise = to.darkness - from.darkness;
    const share = (threshold - from.darkness) / rise;
    if (!(share > 0 && share < 1 && to.at > from.at)) return undefined;
    const around = mostOff / Math.abs(rise);
    const [begin, end] = [Math.max(0, share - around), Math.min(1, share + around)];
    const dark = darkLength(from.colour!, to.colour!, threshold, begin, end);
    const edge = rise > 0 ? end - dark : begin + dark;
    return {
        at: from.at + (to.at - from.at) * edge,
        darkness: threshold,
        opacity: 1,
        colour: mix(from.colour!, to.colour!, edge),
    };
}

/** How much of the way from one colour to another, between two parts of it, looks darker than the threshold. */
function darkLength(from: Colour, to: Colour, threshold: number, begin: number, end: number): number {
    const turns = [begin, end];
    for (const channel of ['red', 'green', 'blue'] as const) {
        const change = steps * (to[channel] - from[channel]);
        if (change === 0) continue;
        const values = [begin, end].map((part) => steps * from[channel] + change * part).toSorted((a, b) => a - b);
        for (let step = Math.ceil(values[0]! - 0.5); step + 0.5 < values[1]!; step++)
            turns.push((step + 0.5 - steps * from[channel]) / change);
    }
    turns.sort((a, b) => a - b);
    let dark = 0;
    for (let i = 0; i + 1 < turns.length; i++) {
        const [left, right] = [turns[i]!, turns[i + 1]!];
        if (darknessOf(inSteps(mix(from, to, (left + right) / 2))) > threshold) dark += right - left;
    }
    return dark;
}

function mix(from: Colour, to: Colour, share: number): Colour {
    const between = (a: number, b: number): number => a + (b - a) * share;
    return {
        red: between(from.red, to.red),
        green: between(from.green, to.green),
        blue: between(from.blue, to.blue),
        alpha: between(from.alpha, to.alpha),
    };
}

function inSteps({ red, green, blue, alpha }: Colour): Colour {
    const rounded = (value: number): number => Math.floor(steps * value + 0.5) / steps;
    return { red: rounded(red), green: rounded(green), blue: rounded(blue), alpha };
}
