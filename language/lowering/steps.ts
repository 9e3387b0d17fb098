import type { AstNode } from 'langium';
import type { Quantity } from '../../shared/quantity/quantity';
import type { Allow } from '../../shared/recipe/allow';
import type {
    Check,
    Climate,
    Cut,
    Do,
    Engrave,
    Fill,
    Finish,
    Flip,
    Inlay,
    Sand,
    Seal,
    Step,
    Wait,
} from '../../shared/recipe/step';
import * as ast from '../generated/ast';
import { isLine } from '../vocabulary/lookup';
import { saysNo } from '../vocabulary/no';
import { aboutOf } from './about';
import { depthOf, reachedOf } from './depth';
import { coatOf, glueOf, maskingOf, resinOf, sealerOf } from './fluids';
import { type FollowedStep, followedBy } from './follow';
import { foundOf } from './found';
import { heldStatements } from './held-statements';
import { Items, isCountable } from './items';
import { type PlacesByName, placementsOf, refOf, scanOf } from './placement';
import { whereOf, whereOfFirstWord, whereOfPart, written } from './places';
import { quantityOf } from './quantity';
import { abrasiveOf, present } from './stock';

type Base = Pick<Step, 'index' | 'whole' | 'where' | 'allows' | 'about' | 'followed'>;

/** A step as plain data; undefined where what is missing leaves it without meaning (a wait without a time). */
export function stepOf(node: ast.Step, index: number, places: PlacesByName): Step | undefined {
    if (!isSaid(node)) return undefined;
    const followed = followedBy(node);
    const base: Base = {
        index,
        whole: whereOf(node),
        where: whereOfFirstWord(node),
        allows: [...allowsOf(node.items), ...(followed?.uses ?? []).flatMap(({ items }) => allowsOf(items))],
        ...present({ about: aboutOf(node), followed: followed && followedOf(followed) }),
    };
    switch (node.$type) {
        case 'Follow':
            return undefined; // what it stands for has taken its place
        case 'Engrave':
            return engraveOf(node, base, places);
        case 'Cut':
            return cutOf(node, base, places);
        case 'Seal':
            return sealOf(node, base);
        case 'Fill':
            return fillOf(node, base);
        case 'Inlay':
            return inlayOf(node, base);
        case 'Wait':
            return waitOf(node, base);
        case 'Peel':
            return { ...base, kind: 'peel', blank: blankRef(node) };
        case 'Sand':
            return sandOf(node, base);
        case 'Finish':
            return finishOf(node, base);
        case 'Mask':
            return {
                ...base,
                kind: 'mask',
                blank: blankRef(node),
                ...present({ film: node.film?.ref && maskingOf(node.film.ref) }),
            };
        case 'Flip':
            return flipOf(node, base);
        case 'Check':
            return checkOf(node, base);
        case 'Do':
            return doOf(node, base);
    }
}

function waitOf(node: ast.Wait, base: Base): Wait | undefined {
    const time = quantityOf(node.time);
    return time && { ...base, kind: 'wait', ...endsOf(time), ...present({ reason: node.reason }) };
}

function flipOf(node: ast.Flip, base: Base): Flip {
    const axis = new Items(node).choice('about')?.value ?? 'upright';
    return { ...base, kind: 'flip', blank: blankRef(node), axis, ...present({ found: foundOf(node) }) };
}

function doOf(node: ast.Do, base: Base): Do {
    const off = node.items.find((item) => ast.isFlag(item) && isLine(item, 'takenoff'));
    return {
        ...base,
        kind: 'do',
        text: node.text ?? '',
        ...present({ time: quantityOf(node.time), takenOff: off && whereOf(off), found: foundOf(node) }),
    };
}

function sealOf(node: ast.Seal, base: Base): Seal {
    const sealer = node.sealer?.ref;
    return {
        ...base,
        kind: 'seal',
        blank: blankRef(node),
        ...present({ sealer: sealer && sealerOf(sealer), climate: climateIn(node) }),
        coats: coatsOf(node),
    };
}

function fillOf(node: ast.Fill, base: Base): Fill {
    const resin = node.resin?.ref;
    const overfill = new Items(node).figure('overfill') ?? noOverfill(node);
    const pocket = refOf(node.pocket, base.where);
    return { ...base, kind: 'fill', pocket, ...present({ resin: resin && resinOf(resin), overfill, climate: climateIn(node) }) };
}

function finishOf(node: ast.Finish, base: Base): Finish {
    const coat = node.coat?.ref;
    return {
        ...base,
        kind: 'finish',
        blank: blankRef(node),
        ...present({ coat: coat && coatOf(coat), climate: climateIn(node) }),
        coats: coatsOf(node),
    };
}

/** The climate that a step says for what it lays; undefined where it says none. */
function climateIn(node: ast.Seal | ast.Fill | ast.Inlay | ast.Finish): Climate | undefined {
    const items = new Items(node);
    const climate = present({ temperature: items.figure('temperature'), humidity: items.figure('humidity') });
    return Object.keys(climate).length === 0 ? undefined : climate;
}

/** `without overfill`: just as much is mixed as the hollow holds. */
function noOverfill(node: ast.Fill): Quantity | undefined {
    const line = node.items.find((item) => saysNo(item, 'overfill'));
    return line && { value: 0, tolerance: 0, dimension: 'ratio', unit: '%', where: whereOf(line) };
}

function followedOf({ routine, uses }: FollowedStep): Base['followed'] {
    return { name: routine.name, piece: routine.piece.name, whole: whereOf(routine), where: whereOf(uses[0]) };
}

/** `wait 12 .. 24 h`: the shorter end is what has passed at least, the longer end what may have passed. */
function endsOf(time: Quantity): Pick<Wait, 'time' | 'longest'> {
    if (time.tolerance === 0) return { time };
    const end = (value: number): Quantity => ({ ...time, value, tolerance: 0 });
    return { time: end(Math.max(0, time.value - time.tolerance)), longest: end(time.value + time.tolerance) };
}

/** Whether the first line of a step says what it is about. What it names may still be unknown. */
function isSaid(node: ast.Step): boolean {
    switch (node.$type) {
        case 'Engrave':
        case 'Cut':
            return node.name !== undefined && node.blank !== undefined;
        case 'Seal':
            return node.blank !== undefined && node.sealer !== undefined;
        case 'Fill':
            return node.pocket !== undefined && node.resin !== undefined;
        case 'Finish':
            return node.blank !== undefined && node.coat !== undefined;
        case 'Inlay':
            return node.relief !== undefined && node.pocket !== undefined;
        case 'Check':
            return node.step !== undefined;
        case 'Wait':
            return node.time !== undefined;
        case 'Do':
            return node.text !== undefined;
        default:
            return node.blank !== undefined;
    }
}

export function allowsOf(items: readonly AstNode[] | undefined): Allow[] {
    return (items ?? [])
        .filter(ast.isAllow)
        .filter((allow) => allow.rule !== undefined)
        .map((allow) => ({ rule: allow.rule, reason: allow.reason ?? '', where: whereOf(allow) }));
}

function blankRef(node: Extract<ast.Step, { blank?: unknown }>) {
    return refOf(node.blank, whereOfFirstWord(node));
}

function coatsOf(node: ast.Seal | ast.Finish): number {
    return new Items(node).count('coats')?.value ?? 1;
}

function beamWork(node: ast.Engrave | ast.Cut, places: PlacesByName) {
    const items = new Items(node);
    return {
        name: node.name ?? '',
        nameWhere: whereOfPart(node, 'name'),
        blank: blankRef(node),
        placements: placementsOf(node.items, places),
        mirror: (node.items as readonly AstNode[]).filter(mirrors).map(whereOf),
        settingsWhere: heldStatements(node).filter(isRead).map(whereOf),
        ...present({
            mirrorOff: items.first((item) =>
                saysNo(item, 'mirror') || (ast.isFlag(item) && item.state === 'off') ? whereOf(item) : undefined,
            ),
            air: items.first(airOf),
            power: items.figure('power'),
            speed: items.figure('speed'),
            passes: items.count('passes'),
            offset: items.figure('offset'),
            offsetWhere: items.line('offset'),
        }),
    };
}

/** `mirror off`, as it was written before `without mirror`, says no, such as in a variant of a recipe that mirrors. */
function mirrors(item: AstNode): boolean {
    return ast.isFlag(item) && isLine(item, 'mirror') && item.state !== 'off';
}

function isRead(item: AstNode): boolean {
    if (ast.isFigure(item)) return quantityOf(item.value) !== undefined;
    return ast.isCount(item) && isCountable(item.value, item.$container.$type, item.key);
}

function engraveOf(node: ast.Engrave, base: Base, places: PlacesByName): Engrave {
    const items = new Items(node);
    const tone = node.items.find((item) => ast.isFigure(item) && isLine(item, 'tone'));
    return {
        ...base,
        kind: 'engrave',
        ...beamWork(node, places),
        ...present({
            depth: items.first(depthOf),
            reached: items.first(reachedOf),
            tone: items.figure('tone'),
            toneWhere: tone && whereOf(tone),
            pitch: items.figure('pitch'),
            scan: items.first((item) => (ast.isScan(item) ? scanOf(item) : undefined)),
            pace: items.choice('pace'),
            outline: items.count('outline'),
        }),
    };
}

function airOf(item: AstNode): Engrave['air'] {
    if (saysNo(item, 'air')) return written<'on' | 'off'>('off', whereOf(item));
    if (!ast.isAir(item) || (item.state !== 'on' && item.state !== 'off')) return undefined;
    return written<'on' | 'off'>(item.state, whereOf(item));
}

function cutOf(node: ast.Cut, base: Base, places: PlacesByName): Cut {
    const items = new Items(node);
    return {
        ...base,
        kind: 'cut',
        ...beamWork(node, places),
        ...present({
            tabs: items.count('tabs'),
            leadIn: items.figure('lead-in'),
            sure: items.figure('sure'),
            kerf: items.figure('kerf'),
            kerfOff: items.first((item) => (saysNo(item, 'kerf') ? whereOf(item) : undefined)),
        }),
    };
}

function inlayOf(node: ast.Inlay, base: Base): Inlay {
    const items = new Items(node);
    const glue = items.first((item) => (ast.isGlueUse(item) ? item.glue?.ref : undefined));
    const glueLine = node.items.find((item) => ast.isGlueUse(item) || saysNo(item, 'glue'));
    const clearance = node.items.find((item) => ast.isFigure(item) && isLine(item, 'clearance'));
    return {
        ...base,
        kind: 'inlay',
        relief: refOf(node.relief, base.where),
        pocket: refOf(node.pocket, base.where),
        ...present({
            glue: glue && glueOf(glue),
            glueWhere: glueLine && whereOf(glueLine),
            clearance: items.figure('clearance'),
            clearanceWhere: clearance && whereOf(clearance),
            marks: items.count('marks'),
            climate: climateIn(node),
        }),
    };
}

function sandOf(node: ast.Sand, base: Base): Sand {
    const flush = node.items.find(ast.isFlush);
    const grits = node.items.filter(ast.isGrits).find((line) => line.grits.length > 0);
    return {
        ...base,
        kind: 'sand',
        blank: blankRef(node),
        flush: flush !== undefined,
        grits: (grits?.grits ?? []).flatMap(({ ref }) => (ref === undefined ? [] : [abrasiveOf(ref)])),
        ...present({
            take: new Items(node).figure('take') ?? quantityOf(flush?.then),
            flushWhere: flush && whereOf(flush),
            gritsWhere: grits && whereOf(grits),
        }),
    };
}

function checkOf(node: ast.Check, base: Base): Check {
    const items = new Items(node);
    const step = refOf(node.step, base.where);
    const through = node.items.find((item) => ast.isFlag(item) && isLine(item, 'through'));
    return {
        ...base,
        kind: 'check',
        step,
        ...present({
            depth: items.figure('depth'),
            width: items.figure('width'),
            tone: items.figure('tone'),
            through: through && whereOf(through),
        }),
    };
}
