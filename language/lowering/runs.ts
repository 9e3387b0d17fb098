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
        ...present({ revision: items.count('issue')?.value, plan, laser: laser && laserOf(laser) }),
        burnt: node.items.filter(ast.isBurnt).flatMap((line) => burntOf(line) ?? []),
        notes: node.items.filter(ast.isNote).flatMap(({ text }) => text ?? []),
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
        ...present({ planned: quantityOf(node.planned), depth: quantityOf(node.depth), width: quantityOf(node.width) }),
        where: whereOf(node),
    };
}

/** Whether a line names its step and no more. */
export function saysNothing({ power, depth, width }: ast.Burnt): boolean {
    return power === undefined && depth === undefined && width === undefined;
}
