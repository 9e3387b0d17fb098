import type { Quantity } from '../quantity/quantity';
import type { Where, Written } from '../quantity/where';

/**
 * What the shop owns, normalised. A figure that is not written is absent, never guessed here:
 * defaults of a kind (`kind slow-epoxy`) are already folded in by the lowering.
 */
export interface Named {
    readonly name: string;
    /** The place of the name where it is declared. */
    readonly where: Where;
    /** What its maker says of it for others (`///`), a paragraph a line. */
    readonly about?: string;
}

export interface Beam extends Named {
    readonly wavelength?: Quantity;
    /** Whether foil tape stops this beam at the powers of a wood shop. */
    readonly foilStops: boolean;
    readonly cautions?: readonly string[];
}

/** What lowers the focus as a pocket gets deeper: the machine, a person at a stop of the machine, or nothing. */
export type Focusing = 'driven' | 'by-hand' | 'fixed';

/** Where a blank has X 0 Y 0, seen as it lies on the machine: a corner, the lower ones towards you, or its middle. */
export const zeros = ['lower-left', 'lower-right', 'upper-left', 'upper-right', 'middle'] as const;
export type Zero = (typeof zeros)[number];

/** `set 20 % gives 6 W`: a setting, as a part of the whole, and the power that is measured at the wood. */
export interface Setpoint {
    readonly setting: Quantity;
    readonly gives: Quantity;
    readonly where: Where;
}

/** What the power does where the head is slower than it was told to be: it stays, or goes down with the speed. */
export const outputs = ['constant', 'with-speed'] as const;
export type LaserOutput = (typeof outputs)[number];

export interface Laser extends Named {
    /** The whole block; absent where a laser stands in no text. */
    readonly whole?: Where;
    readonly beam?: Beam;
    readonly wavelength?: Quantity;
    readonly power?: Quantity;
    readonly leastPower?: Quantity;
    /** Measured places of the power curve, where power does not go with the setting. */
    readonly setpoints?: readonly Setpoint[];
    /** Diameter of the focused spot (1/e2). */
    readonly spot?: Quantity;
    /** Focal length of the lens, diameter of the beam on it, and M2, when the spot is to be worked out. */
    readonly lens?: Quantity;
    readonly aperture?: Quantity;
    readonly quality?: Quantity;
    readonly focus?: Written<Focusing>;
    /** Constant when it is not written. */
    readonly output?: Written<LaserOutput>;
    /** The S of machine files that stands for full power. */
    readonly fullOutput?: Quantity;
    readonly field?: Extent;
    /** The lower left corner when it is not written. */
    readonly zero?: Written<Zero>;
    readonly topSpeed?: Quantity;
    readonly acceleration?: Quantity;
    readonly overtravel?: Quantity;
    /** The last day on which something of it was changed that changes what it burns, and what that was. */
    readonly serviced?: Written<string> & { readonly note?: string };
}

export interface Extent {
    readonly width: Quantity;
    readonly height: Quantity;
    readonly where: Where;
}

/** How open the pores are; open pores carry a wet fill along the grain. */
export type Pores = 'diffuse' | 'semi-ring' | 'ring' | 'softwood';

export interface Wood extends Named {
    readonly density?: Quantity;
    readonly pores?: Pores;
    /** Whether an unsealed fill creeps along the grain. */
    readonly bleeds: boolean;
    /** Movement coefficients, fraction of the width for each per cent of moisture. */
    readonly radial?: Quantity;
    readonly tangential?: Quantity;
    /** Its own name and those of its kinds, the nearest first. */
    readonly kinds?: readonly string[];
    /** Whether its dust colours a pale wood beside it. */
    readonly dustStains?: boolean;
    /** CSS hex colours of the planed and of the burnt face. */
    readonly colour: string;
    readonly burnt: string;
    readonly cautions: readonly string[];
}

/** What something is bought for. */
export interface Price {
    /** Money; its unit is the currency's code where that is written, else the shop's own is meant. */
    readonly paid: Quantity;
    /** Sheets, mm2, mm3 or g. */
    readonly amount: Quantity;
    readonly where: Where;
}

/** What a sheet can be said to be made of, and treated with. */
export const materials = [
    'solid',
    'plywood',
    'mdf',
    'hardboard',
    'chipboard',
    'osb',
    'bamboo',
    'acrylic',
    'polycarbonate',
    'polystyrene',
    'abs',
    'pvc',
] as const;
export type Material = (typeof materials)[number];
/** Bound with glues of which their makers do not always say what they are. */
export const unnamedGlue: ReadonlySet<Material> = new Set(['plywood', 'mdf', 'hardboard', 'chipboard', 'osb', 'bamboo']);
export const treatments = ['nothing', 'preservative', 'fire-retardant', 'paint', 'unknown'] as const;
export type Treatment = (typeof treatments)[number];

/** How a board is sawn: its rings upright, at a slant, or flat to the face; or across the trunk, so that the face is end grain. */
export type Sawn = 'quarter' | 'rift' | 'flat' | 'end';

export interface Sheet extends Named {
    readonly kind: 'board' | 'veneer';
    /** Which lot of it: thickness, moisture and the day it was bought are those of the lot where that says them. */
    readonly lot?: string;
    readonly wood?: Wood;
    readonly madeOf?: Written<Material>;
    readonly treatedWith?: Written<Treatment>;
    /** How its rings lie to the face; not known where nothing is said. */
    readonly sawn?: Written<Sawn>;
    readonly thickness?: Quantity;
    /** What the depth of the same settings differs by in another board of it than the measured one: one standard deviation, as a part. */
    readonly varies?: Quantity;
    readonly moisture?: Quantity;
    /** The day on which what is in the rack now was bought. */
    readonly bought?: Written<string>;
    /** Size in which it is bought. */
    readonly sheet?: Extent;
    readonly price?: Price;
}

/** A board or veneer as it stands in the rack: two lots of it are two. */
export function rackName({ name, lot }: Pick<Sheet, 'name' | 'lot'>): string {
    return lot === undefined ? name : `${name} lot ${lot}`;
}

export interface Mix {
    readonly resin: number;
    readonly hardener: number;
    readonly by: 'volume' | 'weight';
    readonly where: Where;
}

export interface Resin extends Named, Laying {
    readonly kind?: string;
    readonly mix?: Mix;
    /** How its kind is mixed, where it says something else itself. */
    readonly usualMix?: Mix;
    readonly potLife?: Quantity;
    readonly cure?: Quantity;
    /** When the next layer bonds by itself: the middle of the window, and half its width as the tolerance. */
    readonly recoat?: Quantity;
    readonly deepestPour?: Quantity;
    /** The most in one cup for which the pot life holds, g: more sets sooner. */
    readonly largestMix?: Quantity;
    readonly narrowestSlot?: Quantity;
    readonly density?: Quantity;
    /** Mass of pigment as a fraction of the whole: resin, hardener, pigment and metal powder. */
    readonly pigment?: Quantity;
    /** Metal, stone or mica powder as a fraction of the same whole by mass, or of the room that it fills where `powderBy` is volume. */
    readonly powder?: Quantity;
    readonly powderBy?: 'volume';
    /** Of the solid grains, g/mm3. */
    readonly solidDensity?: Quantity;
    /** Of resin and hardener as they are bought together. */
    readonly price?: Price;
    readonly pigmentPrice?: Price;
    readonly powderPrice?: Price;
    readonly opacity?: Quantity;
    readonly colour: string;
    readonly cautions?: readonly string[];
    /** Whose word says that food may touch it once it has cured. */
    readonly food?: string;
}

/** What is done to a surface so that the next thing holds on it. */
export type Prepared = 'sanded' | 'wiped';

/** By what something becomes hard: a reaction of two parts, loss of water or solvent, oxygen, damp, or cooling. */
export const hardenings = ['reaction', 'water', 'solvent', 'oxygen', 'damp', 'cooling'] as const;
export type Hardening = (typeof hardenings)[number];

/** What is said of lying on something else: how long that must have had, s, and what is done to it; with neither it never holds. */
export interface Over {
    /** Name of what lies below, or of a kind of it. */
    readonly under: string;
    readonly after?: Quantity;
    /** What has to be done to what lies below. */
    readonly once?: Prepared;
    readonly where: Where;
}

/** What can be laid on something else. */
export interface Laying {
    /** Its own name and those of its kinds, the nearest first. */
    readonly kinds: readonly string[];
    /** What is said of it; of all else nothing is known. */
    readonly over: readonly Over[];
    readonly setsBy?: Hardening;
    /** The coldest at which it may be used, degC. */
    readonly leastTemperature?: Quantity;
    /** Temperature that its times are worked out for, degC, where they are not those of its sheet. */
    readonly at?: number;
}

export interface Sealer extends Named, Laying {
    readonly kind?: string;
    readonly dry?: Quantity;
    readonly spread?: Quantity;
    readonly density?: Quantity;
    readonly price?: Price;
    readonly cautions: readonly string[];
    /** Whose word says that food may touch it once it has cured. */
    readonly food?: string;
}

/** What the damp and sun out of doors do to a glue or finish. */
export type Weather = 'stands' | 'fails';

export interface Glue extends Named, Laying {
    readonly kind?: string;
    /** Thickness of the film that stays in the joint. */
    readonly film?: Quantity;
    readonly open?: Quantity;
    /** How long it stays under the press. */
    readonly clamp?: Quantity;
    /** Whether it lasts out of doors. */
    readonly weather?: Weather;
    readonly cure?: Quantity;
    readonly spread?: Quantity;
    readonly density?: Quantity;
    readonly price?: Price;
    readonly cautions: readonly string[];
    /** Whose word says that food may touch it once it has cured. */
    readonly food?: string;
}

export interface Coat extends Named, Laying {
    readonly kind?: string;
    readonly dry?: Quantity;
    readonly cure?: Quantity;
    readonly spread?: Quantity;
    readonly density?: Quantity;
    readonly price?: Price;
    /** Whether rags wet with it heat up and catch fire by themselves. */
    readonly rags?: 'ignite' | 'harmless';
    /** Whether it lasts out of doors. */
    readonly weather?: Weather;
    readonly cautions: readonly string[];
    /** Whose word says that food may touch it once it has cured. */
    readonly food?: string;
}

/** What a masking film can be said to be made of. */
export const films = ['paper', 'polyester', 'polyethylene', 'pvc'] as const;

/** Tape or film that a face is masked with. */
export interface Masking extends Named, Laying {
    readonly madeOf?: Written<(typeof films)[number]>;
    /** How long it may stay on before its gum stays behind, s. */
    readonly stays?: Quantity;
    /** What the first pass spends on it, J/mm2. */
    readonly takes?: Quantity;
    readonly cautions: readonly string[];
}

export interface Abrasive extends Named {
    /** Median grain size. */
    readonly grain?: Quantity;
}

/** One measured square of a coupon that was burnt for its tone (0 bare, 1 the darkest that does not dig). */
export interface ToneBurn {
    readonly power: Quantity;
    readonly speed: Quantity;
    readonly passes: number;
    readonly tone: Quantity;
    readonly where: Where;
}

/** One measured square of a coupon. */
export interface Burn {
    readonly power: Quantity;
    readonly speed: Quantity;
    readonly passes: number;
    readonly depth: Quantity;
    readonly where: Where;
}

/** One cut that was tried: whether it came through, left a skin, or how deep it went. */
export interface CutTest {
    readonly power: Quantity;
    readonly speed: Quantity;
    readonly passes: number;
    /** Of the offcut, where it was not the sheet's own. */
    readonly thickness?: Quantity;
    readonly gives: 'through' | 'skin' | Quantity;
    /** Width of the kerf on the face, and on the back. */
    readonly kerf?: Quantity;
    readonly back?: Quantity;
    /** How much larger all round than its opening the largest plug was drawn that went in, both cut along their lines. */
    readonly fits?: Quantity;
    readonly where: Where;
}

export interface Coupon {
    readonly sheet: string;
    readonly laser: string;
    readonly pitch?: Quantity;
    /** The day on which it was burnt, `2026-05-02`. */
    readonly burnt?: Written<string>;
    readonly burns: readonly Burn[];
    readonly tones?: readonly ToneBurn[];
    readonly cuts?: readonly CutTest[];
    /** Squares that stand there to be burnt and measured, `burn 40 % at 400 mm/s x 3`. */
    readonly open?: readonly string[];
    /** The whole block; absent where a coupon stands in no text. */
    readonly whole?: Where;
    /** The block's first word. */
    readonly where: Where;
}

/** A coupon together with what it names: all that its fit needs. */
export interface MeasuredCoupon {
    readonly coupon: Coupon;
    readonly laser: Laser;
    readonly sheet: Sheet;
}
