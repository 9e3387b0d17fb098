import { GrammarUtils, type LangiumDocument } from 'langium';
import type { CodeLensProvider } from 'langium/lsp';
import type { CodeLens, CodeLensParams, Command } from 'vscode-languageserver';
import { phrase } from '../../shared/recipe/phrase';
import { isFile, isRecipe, type Recipe } from '../generated/ast';
import { plannedRun } from '../planned/planned-step';
import type { KerfServices } from '../services';
import type { KerfLanguageServer } from '../workspace/language-server';

/** Commands of the editor that a lens runs, with the file and the recipe, where the editor has them. */
function offered() {
    return [
        { title: phrase`View`, command: 'kerfbook.openBenchViewToSide' },
        { title: phrase`Write files`, command: 'kerfbook.writeFiles' },
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
        const { commands } = (this.services.shared.lsp.LanguageServer as KerfLanguageServer).client;
        const facts: Command[] = said.map((title) => ({ title, command: '' }));
        const acts: Command[] = offered()
            .filter(({ command }) => commands.has(command) && recipe.name)
            .map((each) => ({ ...each, arguments: [uri, recipe.name] }));
        return [...facts, ...acts].map((command) => ({ range, command }));
    }
}
