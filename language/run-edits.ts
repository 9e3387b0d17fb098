import type { LangiumDocument } from 'langium';
import { atEnd } from './editing/at-end';
import type { SpanEdit } from './editing/text-edits';
import { isNewer } from './edition';
import { isCut, isEngrave, isFile, isRecipe, isRun } from './generated/ast';
import { isDay } from './lowering/day';
import { whereOf } from './lowering/places';
import { needsItsKind } from './parsing/run-lines';
import { type RunText, runBlock } from './printing/run-block';
import type { KerfServices } from './services';
import { mergedItems } from './variants/merge';

/**
 * The edit that writes a run into the file of its recipe: behind the last run of that recipe, or at the
 * end. Undefined for a run that the language would not read back as it was meant.
 */
export function runEdits(document: LangiumDocument, written: RunText, services: KerfServices): SpanEdit[] | undefined {
    if (isNewer(document)) return undefined;
    const run = { ...written, lines: written.lines.map((line) => withKind(line, document, written.recipe)) };
    const block = runBlock(run);
    if (!isReadable(block, run, services)) return undefined;
    const text = document.textDocument.getText();
    const lineBreak = text.includes('\r\n') ? '\r\n' : '\n';
    const file = document.parseResult.value;
    const earlier = isFile(file)
        ? file.entries.filter(isRun).findLast((each) => each.recipe?.$refText === run.recipe)
        : undefined;
    if (earlier !== undefined) {
        const { offset, length } = whereOf(earlier);
        const put = `\n${block.trimEnd()}`.replaceAll('\n', lineBreak);
        return [{ offset: offset + length, length: 0, text: put }];
    }
    return [atEnd(text, block)];
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

function isReadable(block: string, run: RunText, services: KerfServices): boolean {
    const { value, lexerErrors, parserErrors } = services.parser.LangiumParser.parse(block);
    if (lexerErrors.length > 0 || parserErrors.length > 0 || !isFile(value) || value.entries.length !== 1) return false;
    const [entry] = value.entries;
    const lines = 1 + (run.laser === undefined ? 0 : 1) + run.lines.length + run.notes.length;
    return isRun(entry) && isDay(entry.date) && entry.items.length === lines;
}
