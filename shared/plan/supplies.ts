import { nearestCami } from '../bench/abrasive-grades';
import type { Recipe } from '../recipe/recipe';
import type { Abrasive } from '../recipe/stock';
import type { BlankPlan, StepPlan, Supply } from './plan';

/** Spread of a coat when the stock does not say, g/mm2 (100 g/m2: common practice, no source). */
const usualSpread = 100e-6;
/** Spare for what stays in cups and on brushes: common practice, no source. */
const spare = 1.15;

/** What to have on the bench for all the pieces that the recipe makes. */
export function supplies(recipe: Recipe, blanks: readonly BlankPlan[], steps: readonly StepPlan[]): Supply[] {
    const make = recipe.make;
    const list: Supply[] = [];
    for (const { blank, size, name } of blanks) {
        if (blank.sheet === undefined) continue;
        const note = size === undefined ? name : `${name}, ${size.width} x ${size.height} mm`;
        list.push({ item: blank.sheet.name, kind: blank.sheet.kind, amount: make, unit: 'pieces', note });
        if (blank.backing !== 'none' && size !== undefined) {
            const item = blank.backing === 'foil' ? 'foil tape' : 'backing tape';
            list.push({
                item,
                kind: 'backing',
                amount: (make * size.width * size.height) / 100,
                unit: 'cm2',
                note: `behind ${name}`,
            });
        }
    }
    const face = (name: string | undefined): number => {
        const size = blanks.find((blank) => blank.name === name)?.size;
        return size === undefined ? 0 : size.width * size.height;
    };
    const grits = new Map<string, Supply>();
    for (const plan of steps) list.push(...stepSupplies(plan, make, face, grits));
    list.push(...grits.values());
    return merged(list);
}

function stepSupplies(
    plan: StepPlan,
    make: number,
    face: (name: string | undefined) => number,
    grits: Map<string, Supply>,
): Supply[] {
    const { step } = plan;
    switch (step.kind) {
        case 'fill':
            return fillSupplies(plan, make);
        case 'seal':
        case 'finish': {
            const stock = step.kind === 'seal' ? step.sealer : step.coat;
            if (stock === undefined) return [];
            const amount = make * step.coats * face(plan.blank) * (stock.spread?.value ?? usualSpread) * spare;
            const kind = step.kind === 'seal' ? 'sealer' : 'finish';
            return amount > 0
                ? [{ item: stock.name, kind, amount, unit: 'g', note: `${step.coats} coat${step.coats === 1 ? '' : 's'}` }]
                : [];
        }
        case 'inlay': {
            if (step.glue === undefined || plan.inlay === undefined) return [];
            const amount = make * plan.inlay.pocketLaser.area * (step.glue.spread?.value ?? 150e-6) * spare;
            return [{ item: step.glue.name, kind: 'glue', amount, unit: 'g', note: 'in the pocket' }];
        }
        case 'mask':
            return [
                {
                    item: 'masking tape',
                    kind: 'tape',
                    amount: (make * face(plan.blank)) / 100,
                    unit: 'cm2',
                    note: plan.blank ?? '',
                },
            ];
        case 'sand':
            for (const grit of step.grits) {
                // A quarter sheet for each blank and grit: common practice, no source.
                const known = grits.get(grit.name)?.amount ?? 0;
                const item = `abrasive P${grit.name}`;
                grits.set(grit.name, {
                    item,
                    kind: 'abrasive',
                    amount: known + make * 0.25,
                    unit: 'sheets',
                    note: otherScale(grit),
                });
            }
            return [];
        default:
            return [];
    }
}

/** What the grain is called on papers without a P, where that is another number. */
function otherScale({ name, grain }: Abrasive): string {
    const cami = grain === undefined ? undefined : nearestCami(grain.value);
    return cami === undefined || cami === Number(name) ? '' : `about ${cami} on papers without a P`;
}

function fillSupplies(plan: StepPlan, make: number): Supply[] {
    const { fill, step } = plan;
    if (fill === undefined || step.kind !== 'fill' || step.resin === undefined) return [];
    const { name } = step.resin;
    const parts = fill.mix.parts;
    const list: Supply[] = [];
    if (parts === undefined) {
        list.push({ item: name, kind: 'resin', amount: (make * spare * fill.mix.volume) / 1000, unit: 'ml', note: '' });
    } else {
        const unit = parts.by === 'volume' ? 'ml' : 'g';
        const factor = (make * spare) / (parts.by === 'volume' ? 1000 : 1);
        list.push({ item: name, kind: 'resin', amount: parts.resin * factor, unit, note: 'resin part' });
        list.push({ item: `${name} hardener`, kind: 'hardener', amount: parts.hardener * factor, unit, note: 'hardener part' });
    }
    if (fill.mix.pigment !== undefined && fill.mix.pigment > 0) {
        list.push({ item: `${name} pigment`, kind: 'pigment', amount: fill.mix.pigment * make * spare, unit: 'g', note: '' });
    }
    return list;
}

/** The same thing needed twice is bought once. */
function merged(list: readonly Supply[]): Supply[] {
    const byItem = new Map<string, Supply>();
    for (const supply of list) {
        const key = `${supply.kind} ${supply.item} ${supply.unit} ${supply.kind === 'board' || supply.kind === 'veneer' ? supply.note : ''}`;
        const known = byItem.get(key);
        byItem.set(key, known === undefined ? supply : { ...known, amount: known.amount + supply.amount });
    }
    return [...byItem.values()];
}
