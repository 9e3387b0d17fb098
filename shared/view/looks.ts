import { blend } from '../bench/contrast';
import { resinOver } from '../bench/resin-look';
import { type Column, hair, type Layer, thicknessAt } from '../piece/column';
import type { Face } from '../piece/face';
import type { BlankPlan, Plan } from '../plan/plan';
import type { Wood } from '../recipe/stock';
import { coatTint, tinted } from './coat-look';
import type { GrainView, LookView } from './round-view';
import { backingColour, glueColour, inlayColour, resinOf, tapeColour } from './section-view';
import { unknownWood } from './unknown-wood';

/** How things shine, from soot to poured resin. @commonPractice Own judgement by eye. */
const gloss = {
    char: 0.02,
    wood: 0.12,
    sealed: 0.35,
    finished: 0.65,
    sanded: 0.2,
    resin: 1,
    metal: 0.85,
    foil: 0.6,
    tape: 0.15,
    glue: 0.3,
};

/**
 * How a column looks from above, and the one at its lower end.
 *
 * @param charred whether burnt places are drawn as what the beam left; otherwise as the wood that was there
 */
export function looksOn(plan: Plan, face: Face, blank: BlankPlan, charred = true) {
    const finish = coatGloss(plan, face);
    return {
        /** What is seen from above; undefined where nothing is left. */
        top(column: Column): LookView | undefined {
            const index = column.layers.findIndex(({ kind }) => kind !== 'coat' && kind !== 'air');
            if (index < 0) return undefined;
            const look = lookOf(plan, blank, column, index, charred);
            if (look.kind === 'tape' || look.kind === 'foil' || look.kind === 'char') return look;
            const level = column.top.value <= face.level.value + hair;
            const dull = face.sanded && level && (look.kind === 'resin' || look.kind === 'metal') ? gloss.sanded : look.gloss;
            const tint = coatTint(plan, column);
            const isCoated = tint !== undefined;
            const shown = { ...look, gloss: isCoated ? Math.max(dull, finish) : dull };
            const seen = charred ? toned(plan, blank, column, shown) : shown;
            return seen.kind === 'metal' ? seen : { ...seen, colour: tinted(seen.colour, tint) };
        },
        /** What a layer shows where it is cut open; burnt where a beam did it. */
        side(column: Column, index: number, byBeam: boolean): LookView {
            const layer = column.layers[index]!;
            if (layer.kind === 'wood' && byBeam && charred)
                return { kind: 'char', colour: burntOf(plan, blank, layer), gloss: gloss.char };
            if (layer.kind === 'wood') return woodLook(plan, blank, layer);
            return lookOf(plan, blank, column, index, charred);
        },
        back(column: Column): LookView {
            if (face.backed) return { kind: 'foil', colour: backingColour, gloss: gloss.foil };
            const last = column.layers.at(-1);
            return last === undefined ? openBacking : this.side(column, column.layers.length - 1, false);
        },
        openBacking,
    };
}

const openBacking: LookView = { kind: 'foil', colour: backingColour, gloss: gloss.foil };

function coatGloss(plan: Plan, { bare }: Face): number {
    const kinds = bare.layers.flatMap(({ kind, step }) => (kind === 'coat' ? (plan.steps[step ?? -1]?.step.kind ?? []) : []));
    return kinds.includes('finish') ? gloss.finished : gloss.sealed;
}

/** A layer as it is seen with all that lies below it. */
export function lookOf(plan: Plan, blank: BlankPlan, column: Column, index: number, charred = true): LookView {
    const layer = column.layers[index]!;
    switch (layer.kind) {
        case 'wood':
            return charred && isBurnt(column, index)
                ? { kind: 'char', colour: burntOf(plan, blank, layer), gloss: gloss.char }
                : woodLook(plan, blank, layer);
        case 'resin': {
            const resin = resinOf(plan.steps[layer.step ?? -1]?.step);
            const below = column.layers.findIndex(({ kind }, at) => at > index && kind !== 'coat' && kind !== 'air');
            const ground = below < 0 ? backingColour : lookOf(plan, blank, column, below, charred).colour;
            const colour = resin === undefined ? '#888888' : resinOver(resin, ground, thicknessAt(column, index).value);
            return layer.metal ? { kind: 'metal', colour, gloss: gloss.metal } : { kind: 'resin', colour, gloss: gloss.resin };
        }
        case 'glue':
            return { kind: 'glue', colour: glueColour, gloss: gloss.glue };
        case 'tape':
            return { kind: 'tape', colour: tapeColour, gloss: gloss.tape };
        case 'coat':
        case 'air':
        case 'foil':
            return openBacking;
    }
}

/** The surface of a layer is a floor that a beam has left: nothing of wood lies on it, and it was dug after it was laid. */
function isBurnt({ layers, digs }: Column, index: number): boolean {
    const { step = -1 } = layers[index]!;
    return (
        layers.slice(0, index).every(({ kind }) => kind !== 'wood') &&
        digs.some((dig) => dig.step > step && dig.depth.value > hair)
    );
}

function woodOf(plan: Plan, blank: BlankPlan, { step, name }: Layer): { from: BlankPlan | undefined; wood: Wood | undefined } {
    if (step === undefined) return { from: blank, wood: blank.blank.sheet?.wood };
    const source = plan.steps[step]?.inlay?.reliefLaser.blank ?? name;
    const from = plan.blanks.find((candidate) => candidate.name === source);
    return { from, wood: from?.blank.sheet?.wood };
}

function woodLook(plan: Plan, blank: BlankPlan, layer: Layer): LookView {
    const { from, wood } = woodOf(plan, blank, layer);
    const colour = wood?.colour ?? (layer.step === undefined ? unknownWood.colour : inlayColour(plan, from?.name ?? ''));
    const grain = from === undefined ? undefined : grainOf(from);
    return { kind: 'wood', colour, gloss: gloss.wood, ...(grain === undefined ? {} : { grain }) };
}

function burntOf(plan: Plan, blank: BlankPlan, layer: Layer): string {
    return woodOf(plan, blank, layer).wood?.burnt ?? unknownWood.burnt;
}

/** No grain where nobody has said which way it runs, nor on end grain. */
export function grainOf({ name, blank }: BlankPlan): GrainView | undefined {
    const { sheet } = blank;
    const sawn = sheet?.sawn?.value ?? 'flat';
    if (blank.grain === undefined || sawn === 'end') return undefined;
    return { name, along: blank.grain, sawn, pores: sheet?.wood?.pores ?? 'diffuse' };
}

/** A colour that was burnt all over a surface; the greys of a picture are paints of their own. */
function toned(plan: Plan, blank: BlankPlan, column: Column, look: LookView): LookView {
    const laser = plan.steps[column.tone ?? -1]?.laser;
    if (laser === undefined || laser.pictures !== undefined) return look;
    const burnt = blank.blank.sheet?.wood?.burnt ?? unknownWood.burnt;
    const part = laser.tone === undefined ? 1 : toneOpacity(laser.tone);
    return { ...look, colour: blend(look.colour, burnt, part), gloss: look.gloss * (1 - part) };
}

/** How much of a burnt colour a tone from 0 to 1 shows; the lightest too is seen. */
export function toneOpacity(tone: number): number {
    return 0.25 + 0.75 * Math.min(1, tone);
}
