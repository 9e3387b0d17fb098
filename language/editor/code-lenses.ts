import { GrammarUtils, type LangiumDocument } from 'langium';
import type { CodeLensProvider } from 'langium/lsp';
import type { CodeLens, CodeLensParams, Command } from 'vscode-languageserver';
import { phrase } from '../../shared/recipe/phrase';
import { isFile, isRecipe, type Recipe } from '../generated/ast';
import { plannedRun } from '../planned/planned-step';
import type { KerfServices } from '../services';
import type { ClientAbilities } from '../workspace/client';
import type { KerfLanguageServer } from '../workspace/language-server';

/** Commands that a lens runs: the editor's own with the file and the recipe, where it has them, else those of the server. */
function offered(uri: string, recipe: string, { commands, runsCommands }: ClientAbilities): Command[] {
    const own = [
        { title: phrase`View`, command: 'kerfbook.openBenchViewToSide' },
        { title: phrase`Write files`, command: 'kerfbook.writeFiles' },
    ];
    const ofServer = [
        { title: phrase`Write files`, command: 'kerfbook.build' },
        { title: phrase`Finish a run`, command: 'kerfbook.finishRun' },
    ];
    return [
        ...own.filter(({ command }) => commands.has(command)).map((each) => ({ ...each, arguments: [uri, recipe] })),
        ...(runsCommands ? ofServer : []).map((each) => ({ ...each, arguments: [{ uri, recipe }] })),
    ];
}

/** Above each recipe what the last plan says of a whole run, and what can be done with it. Never waits for a plan. */
export class KerfCodeLenses implements CodeLensProvider {
    constructor(private readonly services: KerfServices) {}

    provideCodeLens(document: LangiumDocument, _params: CodeLensParams): CodeLens[] {
        const file = document.parseResult.value;
        return isFile(file) ? file.entries.filter(isRecipe).flatMap((recipe) => this.lensesOf(recipe, document)) : [];
    }

    private lensesOf(recipe: Recipe, document: LangiumDocument): CodeLens[] {
        const uri = document.uri.toString();
        const range = GrammarUtils.findNodeForKeyword(recipe.$cstNode, 'recipe')?.range;
        if (range === undefined) return [];
        const figures = plannedRun(recipe, this.services.outside.runs(uri));
        const said = figures === undefined ? [] : [figures.time, figures.quantities].filter((title) => title !== '');
        const { client } = this.services.shared.lsp.LanguageServer as KerfLanguageServer;
        const facts: Command[] = said.map((title) => ({ title, command: '' }));
        const acts = recipe.name ? offered(uri, recipe.name, client) : [];
        return [...facts, ...acts].map((command) => ({ range, command }));
    }
}
