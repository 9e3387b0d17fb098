import { type AstNode, AstUtils } from 'langium';
import { inShopClimate } from '../../shared/bench/shop-climate';
import type { Where } from '../../shared/quantity/where';
import type { ArtSource, Blank, Recipe } from '../../shared/recipe/recipe';
import type { Shop } from '../../shared/recipe/shop';
import type { Step } from '../../shared/recipe/step';
import type { Coupon } from '../../shared/recipe/stock';
import * as ast from '../generated/ast';
import { resolvePath } from '../names/used-files';
import type { KerfLexingReport } from '../parsing/lexer';
import { writerOf } from '../variants/adjusted';
import { basesOf } from '../variants/lineage';
import { mergedItems } from '../variants/merge';
import { aboutOf } from './about';
import { expanded } from './follow';
import { Items } from './items';
import { whereOf, whereOfPart, whereOfReference, written } from './places';
import { quantityOf } from './quantity';
import { allowsOf, stepOf } from './steps';
import { laserOf, lotOf, present, sheetOf } from './stock';

type TonePoint = { readonly from: number; readonly to: number };

/** A coupon with the declarations of board and laser that it names: one of the same name elsewhere is another. */
export interface LoweredCoupon {
    readonly coupon: Coupon;
    readonly node: ast.Coupon;
}

/** A recipe without what became of it. */
export type UnburntRecipe = Omit<Recipe, 'runs' | 'measured'>;

/** A recipe as plain data. `coupons` are all that the file can see; those of its own laser and sheets are kept. */
export function recipeOf(node: ast.Recipe, coupons: readonly LoweredCoupon[], shop?: Shop): UnburntRecipe {
    const lines = expanded(mergedItems(node));
    const items = new Items({ $type: 'Recipe', items: lines });
    const laser = items.first((item) => (ast.isLaserUse(item) ? item.laser?.ref : undefined));
    const blanks = lines.filter(ast.isBlank).filter(hasName).map(blankOf);
    const sheets = new Set(lines.filter(ast.isBlank).map(sheetNamedBy));
    const unread = unreadPlaces(node, lines);
    return {
        name: node.name ?? '',
        where: whereOfPart(node, 'name'),
        ...present({ about: [node, ...basesOf(node)].map(aboutOf).find((text) => text !== undefined) }),
        title: node.title ?? node.name ?? '',
        ...baseOf(node),
        whole: whereOf(node),
        revision: items.count('issue')?.value ?? 1,
        make: items.count('make')?.value ?? 1,
        ...(unread.length > 0 ? { incomplete: unread } : {}),
        ...present({ laser: laser && laserOf(laser), shop }),
        arts: lines.filter(ast.isArt).filter(hasName).flatMap(artOf),
        blanks,
        steps: inShopClimate(stepsOf(lines), shop),
        allows: allowsOf(lines),
        coupons: coupons.filter(({ node: of }) => of.laser.ref === laser && sheets.has(of.sheet.ref)).map(({ coupon }) => coupon),
    };
}

/** Lines that the parser could not read, and steps that say too little to be one. */
function unreadPlaces(node: ast.Recipe, lines: readonly ast.RecipeItem[]): Where[] {
    const halves = lines.filter((line) => ast.isStep(line) && stepOf(line, 0, new Map()) === undefined);
    return [...[node, ...basesOf(node)].flatMap(brokenPlaces), ...halves.map(whereOf)];
}

/** Where the text of a recipe could not be read: from its own head up to the next one, as after a broken line a block may seem to end early. */
function brokenPlaces(node: ast.Recipe): Where[] {
    const { parseResult, textDocument } = AstUtils.getDocument(node);
    const { parserErrors, lexerErrors } = parseResult;
    const { conflicts = [] } = (parseResult.lexerReport as Partial<KerfLexingReport> | undefined) ?? {};
    if (parserErrors.length === 0 && lexerErrors.length === 0 && conflicts.length === 0) return [];
    const start = node.$cstNode?.offset ?? 0;
    const entries = ast.isFile(node.$container) ? node.$container.entries : [];
    const next = entries[entries.indexOf(node) + 1]?.$cstNode?.offset ?? Number.POSITIVE_INFINITY;
    const { uri } = whereOf(node);
    return [
        ...lexerErrors.map(({ offset }) => offset),
        ...conflicts.map(({ offset }) => offset),
        // An error at the end of the file has no place of its own.
        ...parserErrors.map(({ token: { startOffset } }) =>
            Number.isFinite(startOffset) ? startOffset : textDocument.getText().length,
        ),
    ]
        .filter((offset) => offset >= start && offset < next)
        .map((offset) => ({ uri, offset, length: 0 }));
}

/** What a variant is based on, for a finding that has its cause there. */
function baseOf(node: ast.Recipe): Pick<Recipe, 'base'> {
    const bases = basesOf(node);
    const where = node.base && whereOfReference(node.base);
    if (bases[0] === undefined || where === undefined) return {};
    return { base: { name: bases[0].name, where, wholes: bases.map(whereOf) } };
}

function hasName(node: { name?: string }): boolean {
    return node.name !== undefined && node.name !== '';
}

function stepsOf(items: readonly ast.RecipeItem[]): Step[] {
    const steps: Step[] = [];
    const places = new Map(
        items
            .filter(ast.isPlaces)
            .filter(hasName)
            .map((each) => [each.name, each]),
    );
    for (const item of items) {
        if (!ast.isStep(item)) continue;
        const step = stepOf(item, steps.length, places);
        if (step !== undefined) steps.push(step);
    }
    return steps;
}

function sheetNamedBy(node: ast.Blank): ast.Sheet | undefined {
    return new Items(node).first((item) => (ast.isMaterial(item) ? item.sheet?.ref : undefined));
}

function blankOf(node: ast.Blank): Blank {
    const items = new Items(node);
    const sheet = sheetNamedBy(node);
    const lot = items.first((item) => (ast.isMaterial(item) ? item.lot?.ref : undefined));
    const backing = items.first((item) => (ast.isBacking(item) ? item.kind : undefined));
    return {
        name: node.name,
        where: whereOfPart(node, 'name'),
        ...present({
            sheet: sheet && (lot === undefined ? sheetOf(sheet) : lotOf(sheetOf(sheet), lot)),
            size: items.size('size'),
            grain: items.first(grainOf),
            grainWhere: items.first((item) => (grainOf(item) === undefined ? undefined : whereOf(item))),
            touchedBy: items.choice('touchedby'),
            kept: items.choice('kept'),
            about: aboutOf(node),
        }),
        backing: backing === 'foil' || backing === 'tape' ? backing : 'none',
        whole: whereOf(node),
    };
}

function grainOf(item: AstNode): Blank['grain'] {
    if (!ast.isGrain(item)) return undefined;
    return item.along === 'width' || item.along === 'height' ? item.along : undefined;
}

/** A curve of which a point cannot be read is none: the others alone would be another curve. */
function curveOf(item: AstNode): ArtSource['curve'] {
    if (!ast.isCurve(item)) return undefined;
    const points = item.points.map((point) => ({ from: quantityOf(point.from)?.value, to: quantityOf(point.to)?.value }));
    if (!points.every((point): point is TonePoint => point.from !== undefined && point.to !== undefined)) return undefined;
    return written<readonly TonePoint[]>(points, whereOf(item));
}

function artOf(node: ast.Art): ArtSource[] {
    if (node.path === undefined || node.path.trim() === '') return []; // said of the text
    const items = new Items(node);
    // A path is seen from the file it stands in, also where a variant of another file only says the size.
    const writer = writerOf(node, 'path');
    return [
        {
            name: node.name,
            where: whereOfPart(node, 'name'),
            path: written(node.path, whereOfPart(writer, 'path')),
            uri: resolvePath(node.path, AstUtils.getDocument(writer).uri)?.toString() ?? '',
            ...present({
                width: items.figure('width'),
                height: items.figure('height'),
                threshold: items.figure('threshold'),
                thresholdWhere: items.line('threshold'),
                dither: items.choice('dither'),
                curve: items.first(curveOf),
                about: aboutOf(node),
            }),
            whole: whereOf(node),
        },
    ];
}
