import { AstUtils, type LangiumDocument } from 'langium';
import { type BurntPocket, pocketsOf } from '../../shared/burn/run-rows';
import { KeptOn } from '../../shared/plan/kept';
import type { Recipe } from '../../shared/recipe/recipe';
import type { MeasuredPocket, Run } from '../../shared/recipe/run';
import type { Sheet } from '../../shared/recipe/stock';
import { isNewer } from '../edition';
import * as ast from '../generated/ast';
import { isSeen, runsAndRecipesOf, runsOf } from '../names/runs-in-sight';
import type { KerfServices } from '../services';
import type { FileRuns, RunsRead } from './measured-runs';
import { type LoweredCoupon, recipeOf, type UnburntRecipe } from './recipe';
import { runOf } from './runs';
import { shopOf, shopsInSight } from './shop';
import { couponOf } from './stock';

/** Recipes of a file by their nodes. */
type Unburnt = ReadonlyMap<ast.Recipe, UnburntRecipe>;

const unburnt = new KeptOn<object, Unburnt>();
const lowered = new KeptOn<object, { readonly read: RunsRead; readonly recipes: readonly Recipe[] }>();

/**
 * The recipes of a linked document as plain data, in the order in which they stand. Never throws:
 * what is broken or not found is absent, and the text's findings say so. Lowered once a linking; list and recipe stay the same
 * objects until a recipe, its runs, or what was measured on its laser and boards has changed.
 */
export function lowerFile(document: LangiumDocument, services: KerfServices): readonly Recipe[] {
    const read = services.names.MeasuredRuns.all();
    const known = lowered.get(document.references);
    if (known?.read === read) return known.recipes;
    const files = read.files.filter((file) => isSeen(file.document, document, services));
    const runs = new Map(files.flatMap((file) => [...file.runs]));
    const pockets = files.flatMap((file) => file.pockets);
    const after = [...unburntOf(document, services)].map(([node, recipe], at): Recipe => {
        const own = runsOf(node, document, services).flatMap((run) => runs.get(run) ?? []);
        const burnt = { ...recipe, runs: own, measured: measuredFor(recipe, pockets) };
        const before = known?.recipes[at];
        return before !== undefined && isSame(before, burnt) ? before : burnt;
    });
    const recipes = known !== undefined && after.every((each, at) => each === known.recipes[at]) ? known.recipes : after;
    lowered.set(document.references, { read, recipes });
    return recipes;
}

/** What the runs of a file say; undefined where there is none that can be read. */
export function lowerRuns(document: LangiumDocument, services: KerfServices): FileRuns | undefined {
    const nodes = runsAndRecipesOf(document).runs;
    if (nodes.length === 0 || isNewer(document)) return undefined;
    const runs = new Map<ast.Run, Run>();
    const pockets: BurntPocket[] = [];
    for (const run of nodes) {
        const [node, read] = [run.recipe?.ref, runOf(run)];
        if (node === undefined || read === undefined) continue;
        const recipe = unburntOf(AstUtils.getDocument(node), services).get(node);
        runs.set(run, read);
        if (recipe !== undefined) pockets.push(...pocketsOf({ ...recipe, runs: [read] }));
    }
    return { document, runs, pockets };
}

function isSame(before: Recipe, after: Recipe): boolean {
    const { runs, measured } = after;
    return (
        before.runs.length === runs.length &&
        before.measured.length === measured.length &&
        runs.every((run, at) => run === before.runs[at]) &&
        measured.every((pocket, at) => pocket === before.measured[at])
    );
}

/** Two lasers or boards of one name in two shops are two: they are told apart by where they are declared. */
function measuredFor({ laser, blanks }: UnburntRecipe, pockets: readonly BurntPocket[]): MeasuredPocket[] {
    if (laser === undefined) return [];
    const isBlankOf = ({ sheetFile, pocket }: BurntPocket): boolean =>
        blanks.some(({ sheet }) => sheet?.name === pocket.sheet && sheet.where.uri === sheetFile && isOfLot(sheet, pocket));
    return pockets
        .filter((each) => each.laser.name === laser.name && each.laser.where.uri === laser.where.uri && isBlankOf(each))
        .map(({ pocket }) => pocket);
}

/** Another lot of a board is other wood; where either does not say its lot, they are taken for one. */
function isOfLot({ lot }: Sheet, pocket: MeasuredPocket): boolean {
    return lot === undefined || pocket.lot === undefined || lot === pocket.lot;
}

function unburntOf(document: LangiumDocument, services: KerfServices): Unburnt {
    // Relinking replaces the list of references, so it stands for this state of the document.
    const known = unburnt.get(document.references);
    if (known !== undefined) return known;
    const coupons = entriesInSight(document, services)
        .filter(ast.isCoupon)
        .flatMap((node): LoweredCoupon[] => {
            const coupon = couponOf(node);
            return coupon === undefined ? [] : [{ coupon, node }];
        });
    const [nearest] = shopsInSight(document, services);
    const shop = nearest && shopOf(nearest.shop);
    const file = document.parseResult.value;
    // What a later edition means by its words nobody knows here, so that nothing is planned, shown or written from it.
    const entries = ast.isFile(file) && !isNewer(document) ? file.entries : [];
    const nodes = entries.filter(ast.isRecipe).filter(({ name }) => name !== undefined);
    const recipes = new Map(nodes.map((node) => [node, recipeOf(node, coupons, shop)]));
    unburnt.set(document.references, recipes);
    return recipes;
}

function entriesInSight(document: LangiumDocument, services: KerfServices): ast.Entry[] {
    const seen = [document, ...services.names.UsedFiles.of(document).map((used) => used.document)];
    return seen.flatMap((each) => {
        const file = each?.parseResult.value;
        return ast.isFile(file) ? file.entries : [];
    });
}
