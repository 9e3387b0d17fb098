import type { Quantity } from '../../shared/quantity/quantity';
import type { BurntStep, Run } from '../../shared/recipe/run';
import * as ast from '../generated/ast';
import { isDay } from './day';
import { Items } from './items';
import { refOf } from './placement';
import { whereOf, whereOfFirstWord, whereOfPart, written } from './places';
import { quantityOf } from './quantity';
import { laserOf, present } from './stock';

/** A run as plain data; undefined where its recipe or its day is not known. */
export function runOf(node: ast.Run): Run | undefined {
    const recipe = node.recipe?.ref?.name;
    if (recipe === undefined || node.date === undefined || !isDay(node.date)) return undefined;
    const items = new Items(node);
    const laser = items.first((item) => (ast.isLaserUse(item) ? item.laser?.ref : undefined));
    const plan = items.first((item) =>
        ast.isPlanOf(item) && item.mark !== undefined ? written(item.mark, whereOf(item)) : undefined,
    );
    return {
        recipe,
        date: written(node.date, whereOfPart(node, 'date')),
        ...present({
            revision: items.count('issue')?.value,
            plan,
            laser: laser && laserOf(laser),
            made: items.count('made')?.value,
            spoiled: items.count('spoiled')?.value,
            took: items.figure('took'),
            by: items.words('by').at(-1),
            temperature: items.figure('temperature'),
        }),
        burnt: node.items.filter(ast.isBurnt).flatMap((line) => burntOf(line) ?? []),
        notes: node.items.filter(ast.isNote).flatMap(({ text }) => text ?? []),
        photos: items.words('photo'),
        links: items.words('link'),
        whole: whereOf(node),
    };
}

/** Undefined for a line of an unknown step, one that says nothing of it, or one with settings that cannot be meant: they must not pass for known. */
function burntOf(node: ast.Burnt): BurntStep | undefined {
    if (node.step?.ref === undefined || saysNothing(node)) return undefined;
    const passes = node.passes ?? 1;
    const settings = present({
        power: quantityOf(node.power),
        speed: quantityOf(node.speed),
        pitch: quantityOf(node.pitch),
    });
    const isRead = (['power', 'speed', 'pitch'] as const).every(
        (key) => (node[key] === undefined) === (settings[key] === undefined),
    );
    if (!isRead || !Number.isInteger(passes) || passes < 1 || passes > 1e6) return undefined;
    const sheet = node.sheet?.ref;
    return {
        step: refOf(node.step, whereOfFirstWord(node)),
        ...present({ sheet: sheet?.name, sheetFile: sheet && whereOf(sheet).uri, lot: node.lot?.ref?.name }),
        ...settings,
        passes,
        ...present({
            planned: quantityOf(node.planned),
            depth: quantityOf(lastDepth(node)),
            passDepths: passDepths(node),
            width: quantityOf(node.widths[0]),
            floorWidth: quantityOf(node.widths[1]),
            tone: quantityOf(node.tone),
            through: isAnswer(node.through) ? written(node.through === 'yes', whereOfPart(node, 'through')) : undefined,
        }),
        where: whereOf(node),
    };
}

/** Whether a word says that something came through, or that it did not. */
export function isAnswer(word: string | undefined): word is 'yes' | 'no' {
    return word === 'yes' || word === 'no';
}

/** Whether a line names its step and no more. */
export function saysNothing({ power, depths, widths, tone, through }: ast.Burnt): boolean {
    return [power, lastDepth({ depths }), widths[0], tone, through].every((each) => each === undefined);
}

/** What was measured after all passes. */
export function lastDepth({ depths }: Pick<ast.Burnt, 'depths'>): ast.Quantity | undefined {
    return depths.at(-1);
}

/** What was measured after each pass, where all of them can be read. */
function passDepths({ depths }: ast.Burnt): Quantity[] | undefined {
    const read = depths.flatMap((each) => quantityOf(each) ?? []);
    return read.length > 1 && read.length === depths.length ? read : undefined;
}
