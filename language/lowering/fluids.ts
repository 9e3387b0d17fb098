import type { AstNode } from 'langium';
import type { Coat, Glue, Laying, Masking, Over, Price, Resin, Sealer } from '../../shared/recipe/stock';
import * as ast from '../generated/ast';
import type { Items } from './items';
import { folded, kindReference, lineage } from './kinds';
import { amountOf } from './number';
import { once } from './once';
import { whereOf } from './places';
import { quantityOf } from './quantity';
import { named, present, priceOf } from './stock';

/** Of a resin whose colour is not written. */
const clearColour = '#e6dcc3';

/** What is bought by mass or volume, and can be of a kind. */
type Fluid = ast.Fluid;

function fluidPrice<Block extends Fluid['$type']>(items: Items<Block>, of: ast.FluidPrice['of']): Price | undefined {
    return items.first((item) => (ast.isFluidPrice(item) && item.of === of ? priceOf(item) : undefined));
}

/** What it is, and what it may lie on: of one thing below, what is said nearest counts. */
function layingOf(line: readonly (Fluid | ast.Masking)[]): Laying {
    const said = new Map<string, Over>();
    for (const item of line.flatMap(({ items }): AstNode[] => items)) {
        if (!ast.isOver(item)) continue;
        const under = item.under?.ref?.name;
        const after = item.after && quantityOf(item.after);
        const once = item.once === 'sanded' || item.once === 'wiped' ? item.once : undefined;
        if (under === undefined || said.has(under) || (after === undefined && once === undefined && !item.never)) continue;
        said.set(under, { under, where: whereOf(item), ...present({ after, once }) });
    }
    return { kinds: line.map(({ name }) => name), over: [...said.values()] };
}

export const resinOf = once((node: ast.Resin): Resin => {
    const line = lineage(node, ast.isResin);
    const items = folded(node.$type, line);
    return {
        ...named(node),
        ...layingOf(line),
        ...present({
            kind: kindReference(node)?.ref?.name,
            mix: items.first(mixOf),
            usualMix: line[0]?.items.some(ast.isMix) === true ? folded(node.$type, line.slice(1)).first(mixOf) : undefined,
            potLife: items.figure('potlife'),
            cure: items.figure('cure'),
            recoat: items.figure('recoat'),
            deepestPour: items.figure('deepestpour'),
            largestMix: items.figure('largestmix'),
            narrowestSlot: items.figure('narrowestslot'),
            density: items.figure('density'),
            pigment: items.figure('pigment'),
            powder: items.figure('powder'),
            powderBy: items.first(powderMeasure),
            solidDensity: items.figure('soliddensity'),
            leastTemperature: items.figure('leasttemperature'),
            setsBy: items.choice('setsby')?.value,
            opacity: items.figure('opacity'),
            food: items.word('food'),
            price: fluidPrice(items, undefined),
            pigmentPrice: fluidPrice(items, 'pigment'),
            powderPrice: fluidPrice(items, 'powder'),
        }),
        colour: items.tone('colour') ?? clearColour,
        cautions: items.words('caution'),
    };
});

function powderMeasure(node: AstNode): Resin['powderBy'] {
    return ast.isFigure(node) && node.key === 'powder' && node.by === 'volume' ? 'volume' : undefined;
}

function mixOf(node: AstNode): Resin['mix'] {
    if (!ast.isMix(node)) return undefined;
    const resin = amountOf(node.resin);
    const hardener = amountOf(node.hardener);
    if (resin === undefined || hardener === undefined || resin <= 0 || hardener < 0) return undefined;
    return { resin, hardener, by: node.by === 'weight' ? 'weight' : 'volume', where: whereOf(node) };
}

export const sealerOf = once((node: ast.Sealer): Sealer => {
    const line = lineage(node, ast.isSealer);
    const items = folded(node.$type, line);
    return {
        ...named(node),
        ...layingOf(line),
        ...present({
            kind: kindReference(node)?.ref?.name,
            dry: items.figure('dry'),
            spread: items.figure('spread'),
            density: items.figure('density'),
            setsBy: items.choice('setsby')?.value,
            food: items.word('food'),
            price: fluidPrice(items, undefined),
        }),
        cautions: items.words('caution'),
    };
});

export const glueOf = once((node: ast.Glue): Glue => {
    const line = lineage(node, ast.isGlue);
    const items = folded(node.$type, line);
    return {
        ...named(node),
        ...layingOf(line),
        ...present({
            kind: kindReference(node)?.ref?.name,
            film: items.figure('film'),
            leastTemperature: items.figure('leasttemperature'),
            open: items.figure('open'),
            clamp: items.figure('clamp'),
            cure: items.figure('cure'),
            spread: items.figure('spread'),
            density: items.figure('density'),
            setsBy: items.choice('setsby')?.value,
            weather: items.choice('weather')?.value,
            food: items.word('food'),
            price: fluidPrice(items, undefined),
        }),
        cautions: items.words('caution'),
    };
});

export const coatOf = once((node: ast.Coat): Coat => {
    const line = lineage(node, ast.isCoat);
    const items = folded(node.$type, line);
    return {
        ...named(node),
        ...layingOf(line),
        ...present({
            kind: kindReference(node)?.ref?.name,
            dry: items.figure('dry'),
            cure: items.figure('cure'),
            spread: items.figure('spread'),
            density: items.figure('density'),
            food: items.word('food'),
            rags: items.choice('rags')?.value,
            weather: items.choice('weather')?.value,
            leastTemperature: items.figure('leasttemperature'),
            setsBy: items.choice('setsby')?.value,
            price: fluidPrice(items, undefined),
        }),
        cautions: items.words('caution'),
    };
});

export const maskingOf = once((node: ast.Masking): Masking => {
    const line = lineage(node, ast.isMasking);
    const items = folded(node.$type, line);
    return {
        ...named(node),
        ...layingOf(line),
        ...present({ madeOf: items.choice('madeof'), stays: items.figure('stays'), takes: items.figure('takes') }),
        cautions: items.words('caution'),
    };
});
