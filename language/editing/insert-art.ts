import { type LangiumDocument, type URI, UriUtils } from 'langium';
import { quotedPath } from '../../shared/recipe/quoted';
import { isNewer } from '../edition';
import * as ast from '../generated/ast';
import { whereOf } from '../lowering/places';
import { resolvePath } from '../names/used-files';
import type { KerfServices } from '../services';
import { freeName } from '../starting/free-name';
import { basesOf } from '../variants/lineage';
import { membersOf } from '../variants/members';
import { Layout } from './layout';
import type { SpanEdit } from './text-edits';

/**
 * The edits that bring art files into the recipe at an offset: each declared once, below the art that is there, and used
 * in the laser step at the offset, if there is one. Undefined where no recipe is.
 */
export function insertArt(
    document: LangiumDocument,
    offset: number,
    files: readonly URI[],
    services: KerfServices,
): readonly SpanEdit[] | undefined {
    const recipe = recipeAt(document, offset);
    if (recipe === undefined || files.length === 0 || isNewer(document)) return undefined;
    const layout = new Layout(document.textDocument.getText());
    const arts = [recipe, ...basesOf(recipe)].flatMap(({ items }) => items.filter(ast.isArt));
    const taken = new Set(arts.map(({ name }) => name));
    const declared: string[] = [];
    const names: string[] = [];
    for (const file of files) {
        const known = arts.find((art) => art.path !== undefined && isFile(art, file, document));
        const name = known?.name ?? freeName(UriUtils.basename(file).replace(/\.[^.]*$/, ''), taken, 'art', services);
        names.push(name);
        if (known !== undefined || taken.has(name)) continue;
        taken.add(name);
        declared.push(`art ${name} ${quotedPath(UriUtils.relative(UriUtils.dirname(document.uri), file))}`);
    }
    const step = membersOf(recipe).find((item) => (ast.isEngrave(item) || ast.isCut(item)) && holds(item, offset));
    const edits = declared.length > 0 ? [declaration(recipe, declared, layout)] : [];
    if (step !== undefined)
        edits.push(
            usage(
                step as ast.Carved,
                offset,
                names.map((name) => `art ${name}`),
                layout,
            ),
        );
    return edits;
}

/** The recipe around the offset; else the last that begins before it, else the first. */
function recipeAt({ parseResult: { value } }: LangiumDocument, offset: number): ast.Recipe | undefined {
    const recipes = ast.isFile(value) ? value.entries.filter(ast.isRecipe) : [];
    return (
        recipes.find((recipe) => holds(recipe, offset)) ??
        recipes.findLast((recipe) => whereOf(recipe).offset < offset) ??
        recipes[0]
    );
}

function holds(node: ast.Recipe | ast.RecipeItem, at: number): boolean {
    const { offset, length } = whereOf(node);
    return offset < at && at < offset + length;
}

function isFile(art: ast.Art, file: URI, document: LangiumDocument): boolean {
    const home = art.$document?.uri ?? document.uri;
    const uri = resolvePath(art.path, home);
    return uri !== undefined && UriUtils.equals(uri, file);
}

/** Below the last art, else below what is said of the whole recipe, else first in its block. */
function declaration(recipe: ast.Recipe, lines: readonly string[], layout: Layout): SpanEdit {
    const above = recipe.items.findLast(ast.isArt) ?? recipe.items.findLast((item) => ast.isCount(item) || ast.isLaserUse(item));
    if (above !== undefined) return below(whereOf(above), lines, layout);
    const { offset } = whereOf(recipe);
    const brace = layout.text.indexOf('{', offset);
    return {
        offset: brace + 1,
        length: 0,
        text: lines.map((line) => `${layout.lineBreak}${layout.indentAt(offset)}${layout.indent}${line}`).join(''),
    };
}

/** Below the step's art, else below its line at the offset, else first in its block. */
function usage(step: ast.Carved, offset: number, lines: readonly string[], layout: Layout): SpanEdit {
    const here =
        step.items.findLast(ast.isArtUse) ?? step.items.findLast((item) => whereOf(item).offset <= layout.lineEnd(offset));
    if (here !== undefined) return below(whereOf(here), lines, layout);
    const where = whereOf(step);
    const brace = layout.text.indexOf('{', where.offset);
    return {
        offset: brace + 1,
        length: 0,
        text: lines.map((line) => `${layout.lineBreak}${layout.indentAt(where.offset)}${layout.indent}${line}`).join(''),
    };
}

function below({ offset, length }: { offset: number; length: number }, lines: readonly string[], layout: Layout): SpanEdit {
    const end = offset + length;
    const alone = layout.standsAlone(offset, end);
    const gap = alone ? `${layout.lineBreak}${layout.indentAt(offset)}` : '  ';
    return { offset: end, length: 0, text: lines.map((line) => `${gap}${line}`).join('') };
}
