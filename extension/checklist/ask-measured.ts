import * as vscode from 'vscode';
import type { DepthReading } from '../../shared/view/coupon-protocol';
import type { ChecklistItem, Measure } from '../../shared/view/protocol';
import { requests } from '../../shared/view/requests';
import type { Measured } from '../../shared/view/run-lines';
import type { RecipeServer } from '../server';
import type { Ticks } from './ticks';

/** Asks for what a check wants measured. Nothing typed leaves it out; undefined if the asking was broken off. */
export async function askMeasured(server: RecipeServer, item: ChecklistItem): Promise<Measured[] | undefined> {
    const measured: Measured[] = [];
    for (const measure of item.measures ?? []) {
        const words = measure.what === 'through' ? await askThrough(item, measure) : await askFigure(server, item, measure);
        if (words === undefined) return undefined;
        if (words !== '') measured.push({ step: measure.step, words });
    }
    return measured;
}

/**
 * Asks for the depths of engravings that no check has asked for. Nothing typed leaves one out.
 * @returns what was measured, by the ids of steps; undefined if the asking was broken off
 */
export async function askBurntDepths(
    server: RecipeServer,
    items: readonly ChecklistItem[],
    ticks: Ticks,
): Promise<ReadonlyMap<string, Measured> | undefined> {
    const known = new Set(
        Object.values(ticks).flatMap(({ measured = [] }) =>
            measured.filter(({ words }) => words.startsWith('depth ')).map(({ step }) => step),
        ),
    );
    const found = new Map<string, Measured>();
    for (const item of items) {
        const measure = item.burntDepth;
        if (measure === undefined || ticks[item.id] === undefined || known.has(measure.step)) continue;
        const words = await askFigure(server, item, measure);
        if (words === undefined) return undefined;
        if (words !== '') found.set(item.id, { step: measure.step, words });
    }
    return found;
}

async function askFigure(server: RecipeServer, { label }: ChecklistItem, measure: Measure): Promise<string | undefined> {
    const { what, step, wish } = measure;
    const typed = await vscode.window.showInputBox({
        title: vscode.l10n.t('{0}: {1} of {2}', label, what, step),
        prompt: vscode.l10n.t(
            'It should be {0}. {1} Empty leaves it out.',
            wish,
            what === 'tone'
                ? vscode.l10n.t('How dark is it, from 0 % bare to 100 % the darkest?')
                : vscode.l10n.t('What did you measure?'),
        ),
        placeHolder: { depth: '0.52 mm', width: '12.1 mm', tone: '80 %', through: '' }[what],
        ignoreFocusOut: true,
        validateInput: async (text) => remark(await read(server, text, what), measure),
    });
    if (typed === undefined) return undefined;
    const reading = await read(server, typed, what);
    if (reading === undefined || 'problem' in reading) return '';
    return what === 'tone' ? reading.depth : `${what} ${reading.depth}`;
}

async function askThrough({ label }: ChecklistItem, { step }: Measure): Promise<string | undefined> {
    const choices = [
        { label: vscode.l10n.t('Through'), description: 'everywhere', words: 'through yes' },
        { label: vscode.l10n.t('Not through'), description: vscode.l10n.t('somewhere it holds'), words: 'through no' },
        { label: vscode.l10n.t('Leave it out'), words: '' },
    ];
    const chosen = await vscode.window.showQuickPick(choices, {
        title: vscode.l10n.t('{0}: did {1} come through?', label, step),
        ignoreFocusOut: true,
    });
    return chosen?.words;
}

async function read(server: RecipeServer, text: string, what: Measure['what']): Promise<DepthReading | undefined> {
    if (text.trim() === '') return undefined;
    if (what !== 'tone') return server.ask(requests.readDepth, { text });
    return server.ask(requests.readDepth, { text: `tone ${/%/.test(text) ? text : `${text} %`}` });
}

/** What cannot be read is refused; what lies outside of what was wished for is said, and may be written down. */
function remark(
    reading: DepthReading | undefined,
    { what, low, high, wish }: Measure,
): vscode.InputBoxValidationMessage | undefined {
    if (reading === undefined) return undefined;
    const value = 'problem' in reading ? undefined : what === 'tone' ? reading.tone : reading.value;
    if ('problem' in reading || value === undefined) {
        const message =
            what === 'tone'
                ? vscode.l10n.t('A part of the darkest, such as 80 %.')
                : vscode.l10n.t('A length, such as 0.52 mm or 1/64 in.');
        return { message, severity: vscode.InputBoxValidationSeverity.Error };
    }
    const rounding = 1e-9; // mm
    if (value >= low - rounding && value <= high + rounding) return undefined;
    const way = value < low ? 'less' : 'more';
    return {
        message: vscode.l10n.t('{0} is {1} than it should be ({2}).', reading.depth, way, wish),
        severity: vscode.InputBoxValidationSeverity.Warning,
    };
}
