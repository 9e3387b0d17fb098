import type { AstNode } from 'langium';
import type { Quantity } from '../../shared/quantity/quantity';
import type { Abrasive, Beam, Coupon, CutTest, Laser, Named, Price, Sheet, Wood } from '../../shared/recipe/stock';
import { openRows } from '../coupon/open-rows';
import * as ast from '../generated/ast';
import type { KeyOf } from '../vocabulary/lookup';
import type { NodeType } from '../vocabulary/property';
import { aboutOf } from './about';
import { isDay } from './day';
import { Items } from './items';
import { folded, lineage } from './kinds';
import { once } from './once';
import { whereOf, whereOfFirstWord, whereOfPart, written } from './places';
import { quantityOf } from './quantity';

/** Bare wood and char, for a wood whose colours are not written. */
const plainColour = '#c8a878';
const charColour = '#3a2416';

export function named(node: AstNode & { name: string }): Named {
    return { name: node.name ?? '', where: whereOfPart(node, 'name'), ...present({ about: aboutOf(node) }) };
}

/** Leaves out what is absent, so that an absent figure is an absent key. */
export function present<T extends object>(fields: T): { [K in keyof T]: Exclude<T[K], undefined> } {
    return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as never;
}

export function beamOf(node: ast.Beam): Beam {
    const items = new Items(node);
    return {
        ...named(node),
        ...present({ wavelength: items.figure('wavelength') }),
        foilStops: items.word('foil') === 'stops',
        cautions: items.words('caution'),
    };
}

export const laserOf = once((node: ast.Laser): Laser => {
    const items = new Items(node);
    const source = items.first((item) => (ast.isLaserBeam(item) && item.beam?.ref !== undefined ? item : undefined));
    const beam = source?.beam.ref && beamOf(source.beam.ref);
    return {
        ...named(node),
        whole: whereOf(node),
        ...present({
            beam,
            wavelength: quantityOf(source?.wavelength) ?? beam?.wavelength,
            power: items.figure('power'),
            leastPower: items.figure('leastpower'),
            setpoints: setpointsOf(node),
            spot: items.figure('spot'),
            lens: items.figure('lens'),
            aperture: items.figure('aperture'),
            quality: items.figure('quality'),
            focus: items.choice('focus'),
            output: items.choice('output'),
            fullOutput: items.figure('fulloutput'),
            field: items.size('field'),
            zero: items.choice('zero'),
            topSpeed: items.figure('topspeed'),
            acceleration: items.figure('acceleration'),
            overtravel: items.figure('overtravel'),
            serviced: lastDay(node, 'serviced'),
        }),
    };
});

function setpointsOf(node: ast.Laser): Laser['setpoints'] {
    const points = node.items.filter(ast.isSetpoint).flatMap((item) => {
        const setting = quantityOf(item.setting);
        const gives = quantityOf(item.gives);
        return setting === undefined || gives === undefined ? [] : [{ setting, gives, where: whereOf(item) }];
    });
    return points.length === 0 ? undefined : points;
}

/** The last of the days that a block writes under a word. */
function lastDay<Block extends NodeType>(
    block: { readonly $type: Block; readonly items: readonly AstNode[] },
    key: KeyOf<Block, 'day'>,
): Laser['serviced'] {
    const days = block.items
        .filter(ast.isDated)
        .filter((item) => item.key === key && item.date !== undefined && isDay(item.date));
    const [last] = days.toSorted((a, b) => (a.date < b.date ? 1 : -1));
    return last && { ...written(last.date, whereOf(last)), ...present({ note: last.note }) };
}

export const woodOf = once((node: ast.Wood): Wood => {
    const line = lineage(node, ast.isWood);
    const items = folded(node.$type, line);
    return {
        ...named(node),
        kinds: line.map(({ name }) => name),
        ...present({
            density: items.figure('density'),
            pores: items.choice('pores')?.value,
            radial: items.figure('radial'),
            tangential: items.figure('tangential'),
        }),
        bleeds: items.word('bleed') !== 'no',
        dustStains: items.word('dust') === 'stains',
        colour: items.tone('colour') ?? plainColour,
        burnt: items.tone('char') ?? charColour,
        cautions: items.words('caution'),
    };
});

type PriceNode = ast.SheetPrice | ast.FluidPrice | ast.ShopPrice;

/** A price that can be reckoned with: something for something. */
export function priceOf(node: PriceNode): Price | undefined {
    const paid = quantityOf(node.paid);
    const amount = quantityOf(node.amount);
    return paid && amount && amount.value > 0 ? { paid, amount, where: whereOf(node) } : undefined;
}

export const sheetOf = once((node: ast.Sheet): Sheet => {
    const items = new Items(node);
    const wood = items.first((item) => (ast.isWoodOf(item) ? item.wood?.ref : undefined));
    return {
        ...named(node),
        kind: ast.isBoard(node) ? 'board' : 'veneer',
        ...present({
            wood: wood && woodOf(wood),
            madeOf: items.choice('madeof'),
            treatedWith: items.choice('treatedwith'),
            sawn: items.choice('sawn'),
            thickness: items.figure('thickness'),
            moisture: items.figure('moisture'),
            varies: items.figure('varies'),
            bought: lastDay(node, 'bought'),
            sheet: items.size('sheet'),
            price: items.first((item) => (ast.isSheetPrice(item) ? priceOf(item) : undefined)),
        }),
    };
});

/** A board or veneer as one lot of it is: what was measured in that takes the place of the usual figures. */
export function lotOf(sheet: Sheet, node: ast.Lot): Sheet {
    const items = new Items(node);
    const measured = {
        thickness: items.figure('thickness'),
        moisture: items.figure('moisture'),
        bought: lastDay(node, 'bought'),
    };
    return { ...sheet, ...present(measured), lot: node.name };
}

export const abrasiveOf = once((node: ast.Abrasive): Abrasive => {
    return { ...named(node), ...present({ grain: new Items(node).figure('particle') }) };
});

export function couponOf(node: ast.Coupon): Coupon | undefined {
    const sheet = node.sheet?.ref?.name;
    const laser = node.laser?.ref?.name;
    if (sheet === undefined || laser === undefined) return undefined;
    const squares = node.items.filter(ast.isBurn).flatMap((burn) => {
        const power = quantityOf(burn.power);
        const speed = quantityOf(burn.speed);
        const passes = burn.passes ?? 1;
        if (power === undefined || speed === undefined || !isPasses(passes)) return [];
        const square = { power, speed, passes, where: whereOf(burn) };
        return [{ square, depth: quantityOf(burn.depth), tone: quantityOf(burn.tone) }];
    });
    const cuts = node.items.filter(ast.isCutTest).flatMap((test) => cutTestOf(test) ?? []);
    const tones = squares.flatMap(({ square, tone }) => (tone === undefined ? [] : [{ ...square, tone }]));
    const open = openRows(node.$cstNode?.text ?? '').map(({ words }) => words);
    return {
        sheet,
        laser,
        ...present({ pitch: new Items(node).figure('pitch'), burnt: lastDay(node, 'burnt') }),
        burns: squares.flatMap(({ square, depth }) => (depth === undefined ? [] : [{ ...square, depth }])),
        ...(tones.length === 0 ? {} : { tones }),
        ...(cuts.length === 0 ? {} : { cuts }),
        ...(open.length === 0 ? {} : { open }),
        whole: whereOf(node),
        where: whereOfFirstWord(node),
    };
}

function cutTestOf(node: ast.CutTest): CutTest | undefined {
    const power = quantityOf(node.power);
    const speed = quantityOf(node.speed);
    const passes = node.passes ?? 1;
    const gives = node.through === 'through' || node.through === 'skin' ? node.through : quantityOf(node.gives);
    if (power === undefined || speed === undefined || gives === undefined) return undefined;
    // A thickness that is written and cannot be read is not that of the sheet.
    const thickness = quantityOf(node.thickness);
    if (!isPasses(passes) || (node.thickness !== undefined && thickness === undefined)) return undefined;
    const measured = present({ thickness, ...kerfOf(node), fits: quantityOf(node.fits) });
    return { power, speed, passes, gives, ...measured, where: whereOf(node) };
}

/** Width of the kerf on face and back, as it is written, or what a strip that was cut out lacks of its drawn width. */
export function kerfOf({ kerf, back, strip, drawn, stripBack }: ast.CutTest): Partial<Pick<CutTest, 'kerf' | 'back'>> {
    if (kerf !== undefined) return present({ kerf: quantityOf(kerf), back: quantityOf(back) });
    const whole = quantityOf(drawn);
    const lacking = (left: Quantity | undefined): Quantity | undefined =>
        left &&
        whole && { ...left, value: Number((whole.value - left.value).toFixed(9)), tolerance: left.tolerance + whole.tolerance };
    return present({ kerf: lacking(quantityOf(strip)), back: lacking(quantityOf(stripBack)) });
}

function isPasses(passes: number): boolean {
    return Number.isInteger(passes) && passes >= 1 && passes <= 1e6;
}
