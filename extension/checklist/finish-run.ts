import * as vscode from 'vscode';
import { dayOf } from '../../shared/quantity/calendar';
import type { Checklist, RunParams, WrittenAnswer } from '../../shared/view/protocol';
import { requests } from '../../shared/view/requests';
import { runLines } from '../../shared/view/run-lines';
import type { RecipeServer } from '../server';
import { applyEdits } from '../write/apply-edits';
import { mayWrite } from '../write/trust';
import { askBurntDepths } from './ask-measured';
import { jobOf, type TickBook, type Ticks } from './ticks';
import type { WrittenRuns } from './written-runs';

/**
 * "Finish the Run": what was ticked becomes a `run`, in a file of its own or below the recipe, and the ticks go. They stay
 * wherever anything fails, and come back when the run is taken back.
 * @param redraw called whenever ticks have changed
 */
export async function finishRun(
    server: RecipeServer,
    book: TickBook,
    runs: WrittenRuns,
    uri: string,
    checklist: Checklist,
    redraw: () => void,
): Promise<void> {
    const job = jobOf(uri, checklist.recipe);
    if (!(await isDone(checklist, book.of(job)))) return;
    // The server may still know the text of a file that is gone, and a run beside nothing is found by nobody.
    const gone = await whyGone(uri);
    if (gone !== undefined) {
        void vscode.window.showErrorMessage(vscode.l10n.t('{0} Every tick is kept.', gone));
        return;
    }
    const depths = await askBurntDepths(server, checklist.items, book.of(job));
    if (depths === undefined) return;
    // They stay with the ticks, should the run not be written.
    for (const [id, measured] of depths) book.measure(job, id, [measured]);
    const ticks = book.of(job);
    const note = await vscode.window.showInputBox({
        title: vscode.l10n.t('Finish the run of {0}', checklist.title),
        prompt: vscode.l10n.t('What went well or wrong? It is kept with the run. Empty leaves it out.'),
        placeHolder: vscode.l10n.t('Flush after 180; the tip of the beak is thin.'),
        ignoreFocusOut: true,
        validateInput: (text) => (text.length > 500 ? vscode.l10n.t('No more than 500 letters.') : undefined),
    });
    if (note === undefined) return;
    const params: RunParams = {
        uri,
        recipe: checklist.recipe,
        date: dayOf(new Date()),
        revision: checklist.revision,
        ...(checklist.laser === undefined ? {} : { laser: checklist.laser }),
        lines: runLines(
            ticks,
            checklist.items.map(({ id }) => id),
        ),
        notes: note.trim() === '' ? [] : [note],
    };
    if (hasFileOfItsOwn(vscode.Uri.parse(uri, true))) return writeFile(server, runs, params, checklist, redraw);
    const answer = await server.ask(requests.run, params);
    if (answer === undefined || 'problem' in answer) {
        const why = answer?.problem ?? (await whyGone(uri)) ?? vscode.l10n.t('The run could not be written.');
        void vscode.window.showErrorMessage(vscode.l10n.t('{0} Every tick is kept.', why));
        return;
    }
    const document = await write(answer);
    if (document === undefined) return;
    runs.add(answer.uri, job, textOf(answer), document.getText());
    redraw();
    const done = vscode.l10n.t(
        'Run of {0} written below the recipe. Undo there, or Take Back, brings the ticks back.',
        checklist.title,
    );
    const choice = await vscode.window.showInformationMessage(done, vscode.l10n.t('Show'), vscode.l10n.t('Take Back'));
    if (choice === vscode.l10n.t('Show')) await show(document, answer);
    if (
        choice === vscode.l10n.t('Take Back') &&
        (await takeBack(document, answer)) &&
        runs.changed(answer.uri, document.getText())
    )
        redraw();
}

/** Where there is no folder to write into, a run stands below its recipe, whatever the setting says. */
function hasFileOfItsOwn(recipe: vscode.Uri): boolean {
    const wish = vscode.workspace.getConfiguration('kerfbook', recipe).get('checklist.writeRuns');
    return wish !== 'belowRecipe' && vscode.workspace.getWorkspaceFolder(recipe) !== undefined;
}

async function writeFile(
    server: RecipeServer,
    runs: WrittenRuns,
    params: RunParams,
    { recipe, title }: Checklist,
    redraw: () => void,
): Promise<void> {
    if (!mayWrite()) return;
    const answer = await server.ask(requests.writeRun, params);
    if (answer === undefined || 'problem' in answer) {
        const why = answer?.problem ?? (await whyGone(params.uri)) ?? vscode.l10n.t('The run could not be written.');
        void vscode.window.showErrorMessage(vscode.l10n.t('{0} Every tick is kept.', why));
        return;
    }
    const file = vscode.Uri.parse(answer.uri, true);
    runs.addFile(answer.uri, jobOf(params.uri, recipe));
    redraw();
    const path = vscode.workspace.asRelativePath(file, false);
    const done = vscode.l10n.t('Run of {0} written to {1}. Take Back removes it and brings the ticks back.', title, path);
    const choice = await vscode.window.showInformationMessage(done, vscode.l10n.t('Show'), vscode.l10n.t('Take Back'));
    if (choice === vscode.l10n.t('Show')) await vscode.window.showTextDocument(file);
    if (
        choice === vscode.l10n.t('Take Back') &&
        (await takeFileBack(file, answer.text)) &&
        runs.filesChanged([answer.uri], false)
    )
        redraw();
}

/** Only a file that is still as it was written: what somebody added since is theirs. */
async function takeFileBack(file: vscode.Uri, text: string): Promise<boolean> {
    const document = await Promise.resolve(vscode.workspace.openTextDocument(file)).catch(() => undefined);
    if (document?.isDirty === false && document.getText() === text) {
        const edit = new vscode.WorkspaceEdit();
        edit.deleteFile(file);
        if (await vscode.workspace.applyEdit(edit)) return true;
    }
    void vscode.window.showWarningMessage(
        vscode.l10n.t('The run was changed since. Delete its file by hand if it is not wanted.'),
    );
    return false;
}

async function isDone({ items, title }: Checklist, ticks: Ticks): Promise<boolean> {
    const open = items.filter(({ id }) => ticks[id] === undefined).length;
    if (open === items.length) {
        void vscode.window.showInformationMessage(
            vscode.l10n.t('No step of {0} is ticked yet: there is no run to write.', title),
        );
        return false;
    }
    if (open === 0) return true;
    const question = vscode.l10n.t(
        '{0} of {1} steps of {2} {3} not ticked. Write the run all the same?',
        open,
        items.length,
        title,
        open === 1 ? 'is' : 'are',
    );
    return (await vscode.window.showWarningMessage(question, { modal: true }, vscode.l10n.t('Write'))) === vscode.l10n.t('Write');
}

/** Said where the recipe's file is no longer there; undefined where it is, or has never been saved. */
async function whyGone(uri: string): Promise<string | undefined> {
    const file = vscode.Uri.parse(uri, true);
    if (file.scheme === 'untitled') return undefined;
    const isThere = await Promise.resolve(vscode.workspace.fs.stat(file)).then(
        () => true,
        () => false,
    );
    if (isThere) return undefined;
    return vscode.l10n.t(
        '{0} is no longer there, so the run could not be written. Save it again first.',
        vscode.workspace.asRelativePath(file),
    );
}

type Written = Exclude<WrittenAnswer, { readonly problem: string }>;

/** Undefined, with the reason shown, unless the run stands safely in the file. */
async function write(answer: Written): Promise<vscode.TextDocument | undefined> {
    const open = vscode.workspace.textDocuments.find((document) => document.uri.toString() === answer.uri);
    const wasDirty = open?.isDirty === true;
    const document = await applyEdits(answer);
    // What else was typed into it is not saved behind the maker's back.
    if (document === undefined || wasDirty || (await document.save())) return document;
    // A run that stands in the file only here would be written a second time with the ticks that are kept.
    const range = rangeOf(document, answer);
    const edit = new vscode.WorkspaceEdit();
    if (range !== undefined) edit.delete(document.uri, range);
    const removed = range !== undefined && (await vscode.workspace.applyEdit(edit));
    if (!removed) return document;
    void vscode.window.showErrorMessage(
        vscode.l10n.t('The file could not be saved, so the run was not written. Every tick is kept.'),
    );
    return undefined;
}

async function show(document: vscode.TextDocument, answer: Written): Promise<void> {
    const editor = await vscode.window.showTextDocument(document);
    const range = rangeOf(document, answer);
    if (range === undefined) return;
    editor.selection = new vscode.Selection(range.end, range.end);
    editor.revealRange(range);
}

async function takeBack(document: vscode.TextDocument, answer: Written): Promise<boolean> {
    const range = rangeOf(document, answer);
    if (range === undefined) {
        void vscode.window.showWarningMessage(vscode.l10n.t('The run was changed since. Remove it by hand if it is not wanted.'));
        return false;
    }
    const edit = new vscode.WorkspaceEdit();
    edit.delete(document.uri, range);
    if (!(await vscode.workspace.applyEdit(edit))) return false;
    if (!(await document.save()))
        void vscode.window.showWarningMessage(vscode.l10n.t('The run is taken back, but the file could not be saved.'));
    return true;
}

/** Where the text that was written stands now: something may have been typed above it since. */
function rangeOf(document: vscode.TextDocument, { edits }: Pick<Written, 'edits'>): vscode.Range | undefined {
    const text = textOf({ edits });
    const at = text === '' ? -1 : document.getText().lastIndexOf(text);
    return at < 0 ? undefined : new vscode.Range(document.positionAt(at), document.positionAt(at + text.length));
}

function textOf({ edits }: Pick<Written, 'edits'>): string {
    return edits[0]?.text ?? '';
}
