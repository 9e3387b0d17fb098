import * as vscode from 'vscode';
import type { NewFile, NewRecipeAnswer, NewRecipeChoices, NewRecipeParams } from '../../shared/view/new-recipe';
import type { WriteNewParams } from '../../shared/view/protocol';
import { requests } from '../../shared/view/requests';
import type { RecipeServer } from '../server';
import { mayWrite } from '../write/trust';
import { type } from './ask';
import { folderFor } from './folder-for';
import { countOf, type Draft, questions } from './questions';
import { spokenName } from './spoken-name';

const artEnding = /\.(svg|png|jpe?g)$/i;

/** "New Recipe…": asks for technique, stock, art and name, and writes a recipe that has been tried out. */
export function offerNewRecipe(server: RecipeServer): vscode.Disposable {
    return vscode.Disposable.from(
        vscode.commands.registerCommand('kerfbook.newRecipe', (place?: unknown) => begin(server, place, {})),
        vscode.commands.registerCommand('kerfbook.newRecipeFromArt', (place?: unknown) => {
            const art = place instanceof vscode.Uri ? place : activeArt();
            if (art !== undefined && artEnding.test(art.path))
                return begin(server, art, { art: art.toString(), artChosen: true, title: spokenName(art.toString()) });
            void vscode.window.showInformationMessage(
                vscode.l10n.t('Choose a drawing (SVG) or a picture (PNG, JPEG) in the explorer first.'),
            );
            return undefined;
        }),
    );
}

async function begin(server: RecipeServer, place: unknown, known: Draft): Promise<void> {
    if (!mayWrite()) return;
    const folder = await folderFor(place);
    if (folder === undefined) return;
    const [recipes, art] = await Promise.all([
        vscode.workspace.findFiles('**/*.kerf', unseen, 2000),
        vscode.workspace.findFiles('**/*.{svg,png,jpg,jpeg,SVG,PNG,JPG,JPEG}', unseen, 500),
    ]);
    const where = { folder: folder.toString(), files: recipes.map(String) };
    const choices = await server.ask(requests.newRecipeChoices, where);
    if (choices === undefined) return;
    const answers = await ask(
        choices,
        art.toSorted((a, b) => (a.path < b.path ? -1 : 1)),
        known,
    );
    const { technique, board, veneer, laser, resin, colour, title = '', ...draft } = answers?.draft ?? {};
    if (answers === undefined || technique === undefined || board === undefined || laser === undefined) return;
    const params: NewRecipeParams = {
        ...where,
        technique,
        board,
        ...(veneer === undefined ? {} : { veneer }),
        laser,
        ...(resin === undefined ? {} : { resin }),
        ...(colour === undefined ? {} : { colour }),
        ...(draft.art === undefined ? {} : { art: draft.art }),
        title,
    };
    const answer = await sized(server, params, answers.of);
    if (answer !== undefined) await write(server, folder, answer.files);
}

/** What is made is no art, and other tools' folders hold none. */
const unseen = '**/{node_modules,.git,made}/**';

/** @returns the draft with what was answered, and how many questions that took; undefined if it was broken off */
async function ask(
    choices: NewRecipeChoices,
    art: readonly vscode.Uri[],
    known: Draft,
): Promise<{ readonly draft: Draft; readonly of: number } | undefined> {
    const all = questions(choices, art);
    const drafts: Draft[] = [known];
    const asked: number[] = [];
    for (let index = 0; index < all.length; ) {
        const draft = drafts.at(-1)!;
        const { settled, ask: put } = all[index]!;
        const going = settled?.(draft);
        if (going !== undefined) {
            drafts[drafts.length - 1] = going;
            index += 1;
            continue;
        }
        const result = await put(draft, { step: asked.length + 1, of: countOf(all, draft) });
        if (result === 'broken-off') return undefined;
        if (result === 'back') {
            index = asked.pop() ?? 0;
            if (drafts.length > 1) drafts.pop();
            continue;
        }
        asked.push(index);
        drafts.push(result.answer);
        index += 1;
    }
    return { draft: drafts.at(-1)!, of: asked.length + 1 };
}

type Answer = Exclude<NewRecipeAnswer, { readonly problem: string }>;

/** The recipe at the size that it comes to by itself, or at the one that was typed over it. */
async function sized(server: RecipeServer, params: NewRecipeParams, of: number): Promise<Answer | undefined> {
    const first = await worked(server, params);
    if (first === undefined) return undefined;
    const proposed = `${first.size.width} x ${first.size.height} mm`;
    const typed = await type(
        {
            title: vscode.l10n.t('New Recipe'),
            step: of,
            of,
            isLast: true,
            prompt: vscode.l10n.t('How large is the piece? Enter takes what fits the art, the board and the laser.'),
            value: proposed,
        },
        (text) => (sizeIn(text) === undefined ? vscode.l10n.t('Two lengths, such as 240 x 120 mm or 6 x 4 in.') : undefined),
    );
    if (typeof typed === 'string') return undefined;
    const size = sizeIn(typed.answer);
    return typed.answer.trim() === proposed || size === undefined ? first : worked(server, { ...params, size });
}

async function worked(server: RecipeServer, params: NewRecipeParams): Promise<Answer | undefined> {
    const answer = await vscode.window.withProgress(
        { location: vscode.ProgressLocation.Window, title: vscode.l10n.t('Trying the recipe out') },
        () => server.ask(requests.newRecipe, params),
    );
    if (answer === undefined || !('problem' in answer)) return answer;
    void vscode.window.showErrorMessage(answer.problem);
    return undefined;
}

/** mm */
function sizeIn(text: string): { width: number; height: number } | undefined {
    const [, width, height, unit] = /^\s*(\d+(?:[.,]\d+)?)\s*x\s*(\d+(?:[.,]\d+)?)\s*(mm|cm|in)?\s*$/i.exec(text) ?? [];
    const scale = unit?.toLowerCase() === 'in' ? 25.4 : unit?.toLowerCase() === 'cm' ? 10 : 1;
    const [w, h] = [width, height].map((each) => Number(each?.replace(',', '.')) * scale) as [number, number];
    return w >= 5 && h >= 5 && w <= 5000 && h <= 5000 ? { width: w, height: h } : undefined;
}

/** Nothing that is there is written over. Opens the recipe, and the bench view beside it. */
async function write(server: RecipeServer, folder: vscode.Uri, files: readonly NewFile[]): Promise<void> {
    const params: WriteNewParams = { folder: folder.toString(), files };
    const { answer: problem, failed } = await server.attempt(requests.writeNew, params);
    if (problem !== undefined || failed !== undefined) {
        void vscode.window.showErrorMessage(problem ?? vscode.l10n.t('Nothing was written: {0}', failed ?? ''));
        return;
    }
    const recipe = vscode.Uri.joinPath(folder, ...files[0]!.path.split('/'));
    await vscode.window.showTextDocument(recipe, { preview: false });
    await vscode.commands.executeCommand('kerfbook.openBenchViewToSide', recipe);
}

function activeArt(): vscode.Uri | undefined {
    const input = vscode.window.tabGroups.activeTabGroup.activeTab?.input;
    return input instanceof vscode.TabInputText || input instanceof vscode.TabInputCustom ? input.uri : undefined;
}
