import { nearestCami } from '../bench/abrasive-grades';
import { area } from '../geometry/measure';
import type { Face } from '../piece/face';
import { showLength } from '../quantity/show';
import type { Recipe } from '../recipe/recipe';
import type { Shop } from '../recipe/shop';
import { type Abrasive, type Price, rackName } from '../recipe/stock';
import type { BlankPlan, Cutting, StepPlan, Supply } from './plan';
import { costOfUsed, fluidUsed, type Used } from './price';

/** Spread of a coat when the stock does not say, g/mm2 (100 g/m2). @commonPractice */
const usualSpread = 100e-6;
/** Spare for what stays in cups and on brushes. @commonPractice */
const spare = 1.15;
/** Abrasive for each blank and grit, in sheets. @commonPractice */
const sheetsEach = 0.25;

/** What to have on the bench for all the pieces that the recipe makes, and what it costs. */
export function supplies(
    recipe: Recipe,
    blanks: readonly BlankPlan[],
    steps: readonly StepPlan[],
    cuttings: readonly Cutting[],
    faces: readonly (readonly Face[])[],
): Supply[] {
    const { make, shop } = recipe;
    const shelf: Shelf = {
        make,
        shop,
        face: ({ blank: name, step }) => {
            const face = faces[step.index]?.find(({ blank }) => blank === name);
            return face === undefined || face.unsized === true ? 0 : area(face.body.region);
        },
    };
    return merged([
        ...cuttings.map((cutting) => cutSheets(cutting, make, shop)),
        ...blanks.flatMap((blank) => blankSupplies(blank, cuttings, shelf)),
        ...steps.filter(({ step }) => step.kind !== 'sand').flatMap((plan) => stepSupplies(plan, shelf)),
        ...steps.flatMap(({ step }) => (step.kind === 'sand' ? step.grits.map((grit) => paper(grit, shelf)) : [])),
    ]);
}

/** What the amounts are reckoned with. */
interface Shelf {
    readonly make: number;
    readonly shop: Shop | undefined;
    /** Area of the face that a step works on, mm2: of parts that were cut free, theirs alone. */
    readonly face: (plan: StepPlan) => number;
}

function priced(supply: Supply, used: Used, price: Price | undefined, shop: Shop | undefined): Supply {
    const cost = costOfUsed(used, price, shop);
    return cost === undefined ? supply : { ...supply, cost };
}

/** Whole sheets to buy; the cost is of what is used up of them. @param make absent: blanks of several recipes */
export function cutSheets({ sheet, size, yielded, consumed }: Cutting, make: number | undefined, shop: Shop | undefined): Supply {
    const names = make === undefined ? [] : [...new Set(yielded.layout.flat().map(({ name }) => name))];
    const note = [
        `of ${showLength(size.width, sheet.sheet?.width.unit)} x ${showLength(size.height, sheet.sheet?.height.unit)}`,
        names.length === 0 ? '' : `for ${make} ${names.join(' and ')}`,
        yielded.tooLarge.length === 0 ? '' : `${yielded.tooLarge.join(' and ')} does not fit`,
    ];
    return priced(
        {
            item: rackName(sheet),
            kind: sheet.kind,
            amount: yielded.sheets,
            unit: 'sheets',
            note: note.filter((part) => part !== '').join(', '),
        },
        { sheets: consumed, area: consumed * size.width * size.height },
        sheet.price,
        shop,
    );
}

/** A blank whose sheet has no size is counted in pieces; and what it is stuck to. */
function blankSupplies({ blank, size, name }: BlankPlan, cuttings: readonly Cutting[], { make, shop }: Shelf): Supply[] {
    const { sheet: own } = blank;
    if (own === undefined) return [];
    const list: Supply[] = [];
    const area = size === undefined ? undefined : make * size.width * size.height;
    if (!cuttings.some(({ sheet }) => rackName(sheet) === rackName(own))) {
        const note = size === undefined ? name : `${name}, ${size.width} x ${size.height} mm`;
        const used = area === undefined ? {} : { area };
        const pieces: Supply = { item: rackName(own), kind: own.kind, amount: make, unit: 'pieces', note };
        list.push(priced(pieces, used, own.price, shop));
    }
    if (blank.backing !== 'none' && area !== undefined) {
        const item = blank.backing === 'foil' ? 'foil tape' : 'backing tape';
        const price = blank.backing === 'foil' ? shop?.foilPrice : shop?.tapePrice;
        const tape: Supply = { item, kind: 'backing', amount: area / 100, unit: 'cm2', note: `behind ${name}` };
        list.push(priced(tape, { area }, price, shop));
    }
    return list;
}

function stepSupplies(plan: StepPlan, { make, shop, face }: Shelf): Supply[] {
    const { step } = plan;
    switch (step.kind) {
        case 'fill':
            return fillSupplies(plan, make, shop);
        case 'seal':
        case 'finish': {
            const stock = step.kind === 'seal' ? step.sealer : step.coat;
            const mass = make * step.coats * face(plan) * (stock?.spread?.value ?? usualSpread) * spare;
            if (stock === undefined || !(mass > 0)) return [];
            const kind = step.kind === 'seal' ? 'sealer' : 'finish';
            const note = `${step.coats} coat${step.coats === 1 ? '' : 's'}`;
            const used = fluidUsed({ mass }, stock.density?.value);
            return [priced({ item: stock.name, kind, amount: mass, unit: 'g', note }, used, stock.price, shop)];
        }
        case 'inlay': {
            const { glue } = step;
            if (glue === undefined || plan.inlay === undefined) return [];
            const { area, perimeter, depth, step: pocket } = plan.inlay.pocketLaser;
            // An opening has no floor: what goes into it is glued along its edge.
            const isOpening = pocket.kind === 'cut';
            const glued = isOpening ? perimeter * (depth?.value ?? 0) : area;
            const mass = make * glued * (glue.spread?.value ?? 150e-6) * spare;
            const used = fluidUsed({ mass }, glue.density?.value);
            return [
                priced(
                    {
                        item: glue.name,
                        kind: 'glue',
                        amount: mass,
                        unit: 'g',
                        note: isOpening ? 'along the edge' : 'in the pocket',
                    },
                    used,
                    glue.price,
                    shop,
                ),
            ];
        }
        case 'mask': {
            const area = make * face(plan);
            const tape: Supply = { item: 'masking tape', kind: 'tape', amount: area / 100, unit: 'cm2', note: plan.blank ?? '' };
            return [priced(tape, { area }, shop?.tapePrice, shop)];
        }
        default:
            return [];
    }
}

function paper(grit: Abrasive, { make, shop }: Shelf): Supply {
    const sheets = make * sheetsEach;
    const supply: Supply = {
        item: `abrasive P${grit.name}`,
        kind: 'abrasive',
        amount: sheets,
        unit: 'sheets',
        note: otherScale(grit),
    };
    return priced(supply, { sheets }, shop?.abrasivePrice, shop);
}

/** What the grain is called on papers without a P, where that is another number. */
function otherScale({ name, grain }: Abrasive): string {
    const cami = grain === undefined ? undefined : nearestCami(grain.value);
    return cami === undefined || cami === Number(name) ? '' : `about ${cami} on papers without a P`;
}

function fillSupplies({ fill, step }: StepPlan, make: number, shop: Shop | undefined): Supply[] {
    if (fill === undefined || step.kind !== 'fill' || step.resin === undefined) return [];
    const { name, density, price, pigmentPrice, powderPrice } = step.resin;
    const { mix, cups } = fill;
    const list: Supply[] = [];
    const part = (item: string, kind: Supply['kind'], amount: number, by: 'volume' | 'weight', note: string): void => {
        const used = fluidUsed(by === 'volume' ? { volume: amount } : { mass: amount }, density?.value);
        const shown = by === 'volume' ? amount / 1000 : amount;
        list.push(priced({ item, kind, amount: shown, unit: by === 'volume' ? 'ml' : 'g', note }, used, price, shop));
    };
    const many = make * spare;
    const inCups = cups.count > 1 ? `, in ${cups.count} cups` : '';
    if (mix.parts === undefined) part(name, 'resin', many * mix.volume, 'volume', '');
    else {
        part(name, 'resin', many * mix.parts.resin, mix.parts.by, `resin part${inCups}`);
        part(`${name} hardener`, 'hardener', many * mix.parts.hardener, mix.parts.by, `hardener part${inCups}`);
    }
    for (const [kind, mass, of] of [
        ['pigment', mix.pigment, pigmentPrice],
        ['powder', mix.powder, powderPrice],
    ] as const) {
        if (mass === undefined || !(mass > 0)) continue;
        const item = kind === 'pigment' ? `${name} pigment` : `${name} metal powder`;
        list.push(priced({ item, kind, amount: mass * many, unit: 'g', note: '' }, { mass: mass * many }, of, shop));
    }
    return list;
}

/** The same thing needed twice is bought once. */
export function merged(list: readonly Supply[]): Supply[] {
    const byItem = new Map<string, Supply>();
    for (const supply of list) {
        const key = `${supply.kind} ${supply.item} ${supply.unit} ${supply.unit === 'pieces' ? supply.note : ''}`;
        const known = byItem.get(key);
        byItem.set(key, known === undefined ? supply : together(known, supply));
    }
    return [...byItem.values()];
}

function together(a: Supply, b: Supply): Supply {
    const { cost: _cost, ...plain } = a;
    const sum = { ...plain, amount: a.amount + b.amount };
    return a.cost === undefined || b.cost === undefined ? sum : { ...sum, cost: a.cost + b.cost };
}
