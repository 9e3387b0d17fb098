import { converter, formatHex, parse } from 'culori';
import type { Resin } from '../recipe/stock';

const toLight = converter('lrgb');

/**
 * Part of what lies under it that a tinted resin hides in a millimetre, where its `opacity` is not said.
 * @commonPractice Own judgement by eye.
 */
const usualOpacity = 0.85;
/** The same of one with metal, stone or mica powder in it. @commonPractice Own judgement by eye. */
const powderOpacity = 0.99;
/** Thickness in which clear resin over white has the colour that stock gives it, mm. @commonPractice Own judgement by eye. */
const clearReference = 10;

type Tinting = Pick<Resin, 'colour' | 'opacity' | 'pigment' | 'powder'>;

/** No pigment, no powder, and nobody has said that it hides anything. */
export function isClear({ opacity, pigment, powder }: Tinting): boolean {
    if (opacity !== undefined) return opacity.value === 0;
    return (pigment?.value ?? 0) === 0 && (powder?.value ?? 0) === 0;
}

/** Part of what lies under it that a tinted resin hides in a millimetre, 0 to 1. */
export function opacityOf({ opacity, powder }: Tinting): number {
    return opacity?.value ?? ((powder?.value ?? 0) > 0 ? powderOpacity : usualOpacity);
}

/**
 * The colour in which resin is seen over a ground, by the law of Beer and Lambert in linear light: each millimetre lets the same part
 * through. Clear resin takes light away and gives none back, so that over a burnt floor it is dark, whatever its own colour is.
 *
 * @param ground CSS hex colour of what lies below
 * @param depth of the resin, mm
 * @returns CSS hex colour; the resin's own where one of both is no colour
 */
export function resinOver(resin: Tinting, ground: string, depth: number): string {
    const own = toLight(parse(resin.colour));
    const under = toLight(parse(ground));
    if (own === undefined || under === undefined) return resin.colour;
    const thick = Math.max(0, depth);
    if (isClear(resin)) {
        const left = (of: number, through: number): number => of * Math.max(0, through) ** (thick / clearReference);
        return formatHex({ mode: 'lrgb', r: left(under.r, own.r), g: left(under.g, own.g), b: left(under.b, own.b) });
    }
    const seen = (1 - opacityOf(resin)) ** thick;
    const mix = (of: number, below: number): number => of + (below - of) * seen;
    return formatHex({ mode: 'lrgb', r: mix(own.r, under.r), g: mix(own.g, under.g), b: mix(own.b, under.b) });
}
