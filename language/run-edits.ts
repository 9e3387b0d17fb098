import { type LangiumDocument, type URI, UriUtils } from 'langium';
import { quotedPath } from '../shared/recipe/quoted';
import { type RunText, runBlock } from '../shared/recipe/run-block';
import { atEnd } from './editing/at-end';
import type { SpanEdit } from './editing/text-edits';
import { isNewer } from './edition';
import { fingerprintOf } from './fingerprint';
import { isBurnt, isCut, isEngrave, isFile, isRecipe, isRun } from './generated/ast';
import { isDay } from './lowering/day';
import { whereOf } from './lowering/places';
import { filesAround, runsAndRecipesOf } from './names/runs-in-sight';
import { needsItsKind } from './parsing/run-lines';
import type { KerfServices } from './services';
import { mergedItems } from './variants/merge';

/**
 * The edit that writes a run into the file of its recipe: behind the last run of that recipe, or at the
 * end. Undefined for a run that the language would not read back as it was meant.
 */
export function runEdits(document: LangiumDocument, written: RunText, services: KerfServices): SpanEdit[] | undefined {
    const block = readableBlock(document, written, services);
    if (block === undefined) return undefined;
    const text = document.textDocument.getText();
    const lineBreak = lineBreakOf(document);
    const file = document.parseResult.value;
    const earlier = isFile(file)
        ? file.entries.filter(isRun).findLast((each) => each.recipe?.$refText === written.recipe)
        : undefined;
    if (earlier !== undefined) {
        const { offset, length } = whereOf(earlier);
        const put = `\n${block.trimEnd()}`.replaceAll('\n', lineBreak);
        return [{ offset: offset + length, length: 0, text: put }];
    }
    return [atEnd(text, block)];
}

/**
 * The text of a run in a file of its own, which lies at `place` in the folder of its recipe or below: with a `use` only where
 * another recipe of that name could be meant. Undefined for a run that would not be read back as it was meant.
 */
export function runFile(document: LangiumDocument, place: URI, written: RunText, services: KerfServices): string | undefined {
    const block = readableBlock(document, written, services);
    return block && withUse(document, place, written.recipe, block, services);
}

/**
 * The text of a run that was written elsewhere, for a file of its own at `place`: with a `use` where `runFile` puts one.
 * @param recipe whose run it has to be
 * @returns undefined for a text that holds anything but one run that can be read; `of` where it is a run of another recipe
 */
export function takenRun(
    document: LangiumDocument,
    place: URI,
    text: string,
    recipe: string,
    services: KerfServices,
): { readonly text: string } | { readonly of: string } | undefined {
    if (isNewer(document)) return undefined;
    const { value, lexerErrors, parserErrors } = services.parser.LangiumParser.parse(text);
    if (lexerErrors.length > 0 || parserErrors.length > 0 || !isFile(value) || value.entries.length !== 1) return undefined;
    const [run] = value.entries;
    if (!isRun(run) || value.uses.length > 0 || !isDay(run.date)) return undefined;
    if (run.recipe.$refText !== recipe) return { of: run.recipe.$refText };
    return { text: withUse(document, place, recipe, text.replaceAll('\r\n', '\n'), services) };
}

function withUse(document: LangiumDocument, place: URI, recipe: string, block: string, services: KerfServices): string {
    const isNamed = (other: LangiumDocument): boolean => runsAndRecipesOf(other).recipes.some(({ name }) => name === recipe);
    const others = filesAround(place, services.shared.workspace.LangiumDocuments).filter(isNamed);
    const path = UriUtils.relative(UriUtils.dirname(place), document.uri);
    const use = others.every((other) => other === document) ? '' : `use ${quotedPath(path)}\n\n`;
    return `${use}${block}`.replaceAll('\n', lineBreakOf(document));
}

/** The fingerprint of a recipe as it is written now; undefined where the file has none of that name. Needs linked documents. */
export function markOf(document: LangiumDocument, name: string): string | undefined {
    const recipe = runsAndRecipesOf(document).recipes.find((each) => each.name === name);
    return recipe && fingerprintOf(recipe);
}

/** The run with the fingerprint of its recipe as it is written now. */
function readableBlock(document: LangiumDocument, written: RunText, services: KerfServices): string | undefined {
    if (isNewer(document)) return undefined;
    const plan = markOf(document, written.recipe);
    const run = {
        ...written,
        ...(plan === undefined ? {} : { plan }),
        lines: written.lines.map((line) => withKind(line, document, written.recipe)),
    };
    const block = runBlock(run);
    return isReadable(block, run, services) ? block : undefined;
}

function lineBreakOf(document: LangiumDocument): string {
    return document.textDocument.getText().includes('\r\n') ? '\r\n' : '\n';
}

/** A line that begins with the name of a step; with the step's kind before it where the name reads like a word of the run. */
function withKind(line: string, document: LangiumDocument, recipe: string): string {
    const name = line.split(' ', 1)[0]!;
    const file = document.parseResult.value;
    if (!needsItsKind(name) || !isFile(file)) return line;
    const own = file.entries.filter(isRecipe).find((each) => each.name === recipe);
    const step = own && mergedItems(own).find((item) => (isEngrave(item) || isCut(item)) && item.name === name);
    return step === undefined ? line : `${step.$type.toLowerCase()} ${line}`;
}

/** Whether each line is read again as the line of that step, none as a part of another. */
function isReadable(block: string, run: RunText, services: KerfServices): boolean {
    const { value, lexerErrors, parserErrors } = services.parser.LangiumParser.parse(block);
    if (lexerErrors.length > 0 || parserErrors.length > 0 || !isFile(value) || value.entries.length !== 1) return false;
    const [entry] = value.entries;
    const before = 1 + (run.plan === undefined ? 0 : 1) + (run.laser === undefined ? 0 : 1);
    if (!isRun(entry) || !isDay(entry.date) || entry.items.length !== before + run.lines.length + run.notes.length) return false;
    return run.lines.every((line, index) => {
        const item = entry.items[before + index];
        return (
            isBurnt(item) &&
            item.$cstNode?.text === line &&
            line.startsWith(`${item.kind ? `${item.kind} ` : ''}${item.step.$refText} `)
        );
    });
}
