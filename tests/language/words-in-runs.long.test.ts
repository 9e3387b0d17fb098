import { AstUtils, GrammarAST, type LangiumDocument } from 'langium';
import { describe, expect, it } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { upgradeEdits } from '../../language/editing/upgrade';
import { type Burnt, isBurnt, isRun } from '../../language/generated/ast';
import { runEdits } from '../../language/run-edits';
import { textFindings } from '../../language/text-findings';
import { open, services } from './services';

const words = [
    ...new Set(
        AstUtils.streamAllContents(services.Grammar)
            .filter(GrammarAST.isKeyword)
            .map(({ value }) => value)
            .filter((value) => /^\p{L}/u.test(value)),
    ),
];

/** A step that is called like the word, between two others, and whatever is written of it in a run. */
const recipeWith = (kind: string, word: string): string => `laser shed { beam co2  power 45 W }
board oak { wood white-oak  thickness 10 mm }
recipe r {
  laser shed
  blank b { of oak  size 90 x 60 mm }
  engrave early on b { circle 5 mm  depth 0.3 mm }
  ${kind} ${word} on b { circle 9 mm${kind === 'engrave' ? '  depth 0.5 mm' : ''} }
  engrave late on b { circle 7 mm  depth 0.4 mm }
}
`;

/** What can be said of a step, each with what is read of it. */
const said: Readonly<Record<string, string>> = {
    'of oak 80 % at 250 mm/s x 2 depth 0.5 mm': 'of oak, power 80, at 250, x 2, depth 0.5',
    '80 % at 250 mm/s depth 0.4, 0.5 mm': 'power 80, at 250, depth 0.4, depth 0.5',
    'depth 0.5 mm': 'depth 0.5',
    'tone 40 %': 'tone 40',
    'through yes': 'through yes',
    'width 3 mm depth 0.5 mm': 'depth 0.5, width 3',
    'width 30, 29 mm depth 2.5 mm': 'depth 2.5, width 30, width 29',
    '80 % at 250 mm/s': 'power 80, at 250',
};

function read({ sheet, power, speed, passes, depths, widths, tone, through }: Burnt): string {
    const figure = (word: string, quantity: { low?: { whole?: number } } | undefined) =>
        quantity === undefined ? [] : [`${word} ${quantity.low?.whole}`];
    return [
        ...(sheet === undefined ? [] : [`of ${sheet.$refText}`]),
        ...figure('power', power),
        ...figure('at', speed),
        ...(passes === undefined ? [] : [`x ${passes}`]),
        ...depths.flatMap((depth) => figure('depth', depth)),
        ...widths.flatMap((width) => figure('width', width)),
        ...figure('tone', tone),
        ...(through === undefined ? [] : [`through ${through}`]),
    ].join(', ');
}

function linesOf(document: LangiumDocument): string[] {
    return runLines(document).flat();
}

function runLines(document: LangiumDocument): string[][] {
    const runs = AstUtils.streamAst(document.parseResult.value).filter(isRun).toArray();
    return runs.map((run) => run.items.filter(isBurnt).map((line) => `${line.step?.$refText}: ${read(line)}`));
}

const place = 'file:///shop/words-in-runs.kerf';

/** Findings that say that a run was not read as it was meant. */
async function errorsIn(
    text: string,
): Promise<{ readonly document: LangiumDocument; readonly errors: ReturnType<typeof textFindings> }> {
    const document = await open(text, place);
    return { document, errors: textFindings(document, services).filter(({ severity }) => severity === 'error') };
}

async function formatted(document: LangiumDocument): Promise<string> {
    const options = { tabSize: 2, insertSpaces: true };
    const textDocument = { uri: document.uri.toString() };
    return TextDocument.applyEdits(
        document.textDocument,
        await services.lsp.Formatter!.formatDocument(document, { textDocument, options }),
    );
}

function upgraded(document: LangiumDocument): string {
    const range = (offset: number, length: number) => ({
        start: document.textDocument.positionAt(offset),
        end: document.textDocument.positionAt(offset + length),
    });
    const edits = upgradeEdits(document).map(({ offset, length, text }) => ({ range: range(offset, length), newText: text }));
    return TextDocument.applyEdits(document.textDocument, edits);
}

/** Runs in which such parts stand on one line and on several, each of a day of its own. */
function runsOf(orders: readonly (readonly string[])[]): string[] {
    return orders.flatMap((order) =>
        ['  ', '\n  '].map((between) => `{${between}${order.join(between)}${between === '\n  ' ? '\n' : ' '}}`),
    );
}

function dated(runs: readonly string[]): string {
    return runs
        .map((run, index) => `run r ${new Date(Date.UTC(2025, 0, 1 + index)).toISOString().slice(0, 10)} ${run}\n`)
        .join('');
}

describe('a step that is called like a word, in a run', () => {
    it.each(words)(
        '%s with its kind is read wherever it stands, and stays what it is when laid out or upgraded',
        async (word) => {
            for (const kind of ['engrave', 'cut']) {
                const early = 'early 70 % at 300 mm/s depth 0.3 mm';
                const others = ['early: power 70, at 300, depth 0.3', 'late: tone 30'];
                const made = Object.entries(said).map(([line, meant], index) => {
                    const parts = ['issue 2', 'laser shed', early, 'late tone 30 %', 'note "fine"'];
                    // First, in the middle, and last.
                    const [place, before] = [
                        [0, 0],
                        [3, 1],
                        [5, 2],
                    ][index % 3]!;
                    return {
                        runs: runsOf([parts.toSpliced(place!, 0, `${kind} ${word} ${line}`)]),
                        lines: others.toSpliced(before!, 0, `${word}: ${meant}`),
                    };
                });
                const runs = made.flatMap((each) => each.runs);
                const text = recipeWith(kind, word) + dated(runs);
                const { document, errors } = await errorsIn(text);
                expect(errors.map(({ message }) => message)).toEqual([]);
                const expected = made.flatMap(({ lines }) => [...lines, ...lines]);
                expect(linesOf(document)).toEqual(expected);
                for (const after of [await formatted(document), upgraded(document)])
                    expect(linesOf(await open(after, place))).toEqual(expected);
            }
        },
    );

    it.each(words)('%s alone is read, or what is said of it names the way out, which is read', async (word) => {
        const heads = [[], ['early 70 % at 300 mm/s depth 0.3 mm'], ['issue 2  note "fine"']];
        const runs = Object.entries(said).flatMap(([line, meant]) =>
            heads.flatMap((head) => runsOf([[...head, `${word} ${line}`]]).map((run) => ({ run, meant, head }))),
        );
        let text = recipeWith('engrave', word);
        const starts = runs.map(({ run }, index) => {
            const start = text.length;
            text += dated([run]).replace('2025-01-01', new Date(Date.UTC(2025, 0, 1 + index)).toISOString().slice(0, 10));
            return start;
        });
        const { document, errors } = await errorsIn(text);
        const mended: { readonly offset: number; readonly index: number }[] = [];
        const isRead = (lines: readonly string[][], index: number): boolean =>
            lines[index]!.at(-1) === `${word}: ${runs[index]!.meant}`;
        const lines = runLines(document);
        for (const [index, { run, head }] of runs.entries()) {
            const inRun = errors.filter(
                ({ where }) => where.offset >= starts[index]! && where.offset < (starts[index + 1] ?? text.length),
            );
            // What is a clause of the line before it is read as that: `early … depth 0.3 mm tone 40 %`.
            const isClause = head[0]?.startsWith('early') === true && !run.includes('\n');
            if (inRun.length === 0 && isRead(lines, index)) continue;
            // A name that is unknown in several places is said of the first.
            const alone = inRun.length > 0 ? 0 : starts[index]! - recipeWith('engrave', word).length;
            const found = inRun.length > 0 ? inRun : (await errorsIn(recipeWith('engrave', word) + dated([run]))).errors;
            if (isClause && found.length === 0) continue;
            const messages = found.map(({ message }) => message).join('\n');
            const finding = found.find(({ message }) =>
                message.includes(`If the step \`${word}\` is meant, write \`engrave ${word}\``),
            );
            expect(finding, `${run}\n${messages}`).toBeDefined();
            const [change] = finding!.fixes.find(({ title }) => title === `Write \`engrave ${word}\``)!.changes;
            if (change?.do !== 'replace') throw new Error('no text');
            expect(change).toMatchObject({ text: 'engrave ', where: { length: 0 } });
            mended.push({ offset: change.where.offset + alone, index });
        }
        let after = text;
        for (const { offset } of mended.toReversed()) after = `${after.slice(0, offset)}engrave ${after.slice(offset)}`;
        const again = await errorsIn(after);
        expect(again.errors.map(({ message }) => message)).toEqual([]);
        const linesAgain = runLines(again.document);
        for (const { index } of mended) expect(isRead(linesAgain, index), runs[index]!.run).toBe(true);
    });

    it.each(words)('%s is written so that it is read back', async (word) => {
        for (const kind of ['engrave', 'cut']) {
            const document = await open(recipeWith(kind, word), place);
            const lines = Object.keys(said).flatMap((line) => [`early depth 0.3 mm`, `${word} ${line}`]);
            const run = { recipe: 'r', date: '2026-11-20', revision: 1, laser: 'shed', lines, notes: ['fine'] };
            const [edit] = runEdits(document, run, services)!;
            const { document: after, errors } = await errorsIn(document.textDocument.getText() + edit!.text);
            expect(errors.map(({ message }) => message)).toEqual([]);
            expect(linesOf(after)).toEqual(Object.values(said).flatMap((each) => ['early: depth 0.3', `${word}: ${each}`]));
        }
    });

    it('is not written where it would be read as another line', async () => {
        const document = await open(recipeWith('engrave', 'pocket'), place);
        const run = { recipe: 'r', date: '2026-11-20', revision: 1, lines: ['pocket depth 0.5 mm'], notes: [] };
        expect(runEdits(document, run, services)).toHaveLength(1);
        for (const lines of [
            ['temperature 19 degC'],
            ['note "x"'],
            ['depth 0.5 mm'],
            ['pocket 80 % at 3 mm/s', 'depth 0.5 mm'],
        ]) {
            expect(runEdits(document, { ...run, lines }, services), lines.join()).toBeUndefined();
        }
    });
});
