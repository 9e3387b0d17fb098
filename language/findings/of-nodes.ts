import type { AstNode } from 'langium';
import type { Finding } from '../../shared/recipe/finding';
import type { Shop } from '../../shared/recipe/shop';
import * as ast from '../generated/ast';
import { allowFindings } from './allows';
import { artLineFindings, clausesTwice } from './art-lines';
import { valueFindings } from './counts';
import { contradictions, duplicateNames, duplicateProperties } from './duplicates';
import { kindCycles } from './kind-cycles';
import { lookAlikes } from './look-alikes';
import { emptyLines, missingProperties, unsaidClauses } from './missing-properties';
import { numberFindings } from './numbers';
import { placeTwice } from './places';
import { routineFindings } from './routines';
import { priceFindings, shopFindings } from './shop';
import { stepNamesTaken } from './step-names';
import { variantFindings } from './variants';

/** What a node cannot know of by itself. */
export interface Surroundings {
    /** Whether something is broken in a node or right behind it. */
    readonly isBroken: (node: AstNode) => boolean;
    /** Blocks that only say more of one of a base. */
    readonly adjusting: ReadonlySet<AstNode>;
    /** The shop whose currency counts. */
    readonly shop: Shop | undefined;
    /** The rules that `allow` can name. */
    readonly ruleIds: ReadonlySet<string>;
}

type Look = (node: AstNode, around: Surroundings) => Iterable<Finding>;

const looks = new Map<string, Look[]>();
function at(kinds: readonly { readonly $type: string }[], look: Look): void {
    for (const { $type } of kinds) looks.set($type, [...(looks.get($type) ?? []), look]);
}
at([ast.Quantity, ast.Size, ast.Position], numberFindings);
at(
    [
        ast.Count,
        ast.Burn,
        ast.Burnt,
        ast.CutTest,
        ast.Run,
        ast.Order,
        ast.Wanted,
        ast.OnHand,
        ast.Offcut,
        ast.Dated,
        ast.Repeat,
        ast.Tone,
        ast.Trait,
        ast.Found,
        ast.Mix,
    ],
    valueFindings,
);
at([ast.File, ast.Recipe, ast.Board, ast.Veneer], duplicateNames);
at([ast.Recipe], stepNamesTaken);
at([ast.Engrave, ast.Sand], (node, { isBroken }) => contradictions(node, isBroken));
at([ast.ArtUse, ast.Shape], artLineFindings);
at([ast.Burn, ast.Burnt, ast.CutTest], clausesTwice);
at([ast.Burn, ast.Burnt, ast.CutTest], (node, { isBroken }) => (isBroken(node) ? [] : unsaidClauses(node)));
at([ast.Places], placeTwice);
at([ast.Routine], (node, { isBroken }) => (isBroken(node) ? [] : routineFindings(node)));
at([ast.Kind], kindCycles);
at([ast.Allow], (node, { ruleIds }) => allowFindings(node, ruleIds));
at([ast.Shop], shopFindings);
at([ast.Resin, ast.SheetPrice, ast.FluidPrice, ast.ShopPrice], (node, { shop }) => priceFindings(node, shop));
at([ast.Recipe], (node, { isBroken }) => (ast.isRecipe(node) && !isBroken(node) ? variantFindings(node) : []));
at([ast.Burnt], (node, { isBroken }) => (isBroken(node) ? [] : emptyLines(node)));

/** What is to be said of the nodes of a file one by one. Most are figures, and of those nothing else is asked. */
export function* nodeFindings(nodes: readonly AstNode[], around: Surroundings): Iterable<Finding> {
    const { isBroken, adjusting } = around;
    for (const node of nodes) {
        if ('name' in node) yield* lookAlikes(node);
        for (const look of looks.get(node.$type) ?? []) yield* look(node, around);
        if (!('items' in node)) continue;
        yield* duplicateProperties(node, isBroken);
        if (!adjusting.has(node) && !isBroken(node)) yield* missingProperties(node);
    }
}
