import { DocumentState, type LangiumDocument, URI } from 'langium';
import type { CancellationToken } from 'vscode-languageserver';
import { lowerCoupons } from '../../language/lowering/coupons';
import { lowerFile } from '../../language/lowering/lower-file';
import type { PlannedRun, PlannedStep } from '../../language/planned/planned-step';
import type { KerfServices } from '../../language/services';
import { textFindings } from '../../language/text-findings';
import { UnknownFile } from '../../language/workspace/unknown-file';
import type { Where } from '../../shared/quantity/where';
import type { Finding } from '../../shared/recipe/finding';
import { phrase } from '../../shared/recipe/phrase';
import type { Recipe } from '../../shared/recipe/recipe';
import { onceInRoutines } from '../../shared/rules/in-routine';
import type { Asker, Watch } from '../engine/asker';
import { Cancelled, type Job, recipesOf, type Survey } from '../engine/jobs';
import type { ArtCache } from './art-cache';

/**
 * One service behind the editor and the command line, so that both say exactly the same: a built
 * document goes in, findings and everything that follows from a plan come out.
 */
export class Workshop {
    constructor(
        readonly services: KerfServices,
        readonly arts: ArtCache,
        private readonly asker: Asker,
    ) {}

    /** A document as soon as its names are resolved; undefined if there is none of that address. */
    async linked(address: string, token?: CancellationToken): Promise<LangiumDocument | undefined> {
        const { LangiumDocuments, DocumentBuilder, WorkspaceManager } = this.services.shared.workspace;
        const uri = URI.parse(address);
        try {
            await WorkspaceManager.ready;
            // All of it first: a newer text of a file that this one uses counts as much as its own.
            await DocumentBuilder.waitUntil(DocumentState.Linked, token);
            await DocumentBuilder.waitUntil(DocumentState.Linked, uri, token);
            return LangiumDocuments.getDocument(uri);
        } catch (error) {
            if (error instanceof UnknownFile) return undefined;
            throw error;
        }
    }

    /** What can be said of the text alone; never waits. */
    textFindings(document: LangiumDocument): readonly Finding[] {
        return textFindings(document, this.services);
    }

    recipes(document: LangiumDocument): readonly Recipe[] {
        return lowerFile(document, this.services);
    }

    /** The recipe of a name, or the one at an offset, or the first. */
    recipe(document: LangiumDocument, name?: string, offset?: number): Recipe | undefined {
        const all = this.recipes(document);
        if (name !== undefined) return all.find((recipe) => recipe.name === name);
        const here = all.find(
            ({ whole }) => offset !== undefined && whole.offset <= offset && offset <= whole.offset + whole.length,
        );
        return here ?? all[0];
    }

    /** What the trade says of a file; undefined once a newer question has been asked. */
    async tradeFindings(document: LangiumDocument): Promise<readonly Finding[] | undefined> {
        return (await this.survey(document))?.findings;
    }

    /** All that the editor shows of a file's recipes and coupons; undefined once a newer question has been asked. */
    async survey(document: LangiumDocument): Promise<FileSurvey | undefined> {
        const uri = document.uri.toString();
        const text = document.textDocument.getText();
        const { references } = document;
        const { version } = document.textDocument;
        // What is typed meanwhile is planned by itself; going on would only keep it waiting.
        const { LangiumDocuments } = this.services.shared.workspace;
        const isStale = () =>
            document.references !== references ||
            document.textDocument.version !== version ||
            LangiumDocuments.getDocument(document.uri) !== document;
        const findings: Finding[] = [];
        const planned: PlannedStep[] = [];
        const runs: PlannedRun[] = [];
        try {
            const coupons = lowerCoupons(document);
            if (coupons.length > 0) findings.push(...(await this.asker.ask({ do: 'coupons', coupons }, [], `${uri} coupons`)));
            for (const recipe of this.recipes(document)) {
                const survey = await this.surveyRecipe(recipe, uri);
                if (isStale()) return undefined;
                findings.push(...survey.findings);
                if (survey.run !== undefined) runs.push({ recipe: recipe.name, make: recipe.make, figures: survey.run });
                for (const figures of survey.figures) {
                    // A step that a variant takes over as it is has no words here beside which its figures could stand.
                    if (!liesIn(figures.whole, recipe.whole)) continue;
                    const { offset, length } = figures.whole;
                    planned.push({ recipe: recipe.name, text: text.slice(offset, offset + length), figures });
                }
            }
        } catch (error) {
            if (error instanceof Cancelled) return undefined;
            throw error;
        }
        return { findings: onceInRoutines(findings), planned, runs };
    }

    private async surveyRecipe(recipe: Recipe, uri: string): Promise<Survey> {
        try {
            const arts = await this.arts.of(recipe);
            return await this.asker.ask({ do: 'survey', recipe }, arts, `${uri}#${recipe.name}`);
        } catch (error) {
            if (error instanceof Cancelled) throw error;
            return { findings: [failed(recipe, error)], figures: [] };
        }
    }

    /** The asker with the art already read of the recipes that a job is about. */
    async ask<J extends Job>(job: J, subject?: string, watch?: Watch) {
        const arts = await Promise.all(recipesOf(job).map((recipe) => this.arts.of(recipe)));
        return this.asker.ask(job, arts.flat(), subject, watch);
    }
}

function liesIn(place: Where, whole: Where): boolean {
    const end = place.offset + place.length;
    return place.uri === whole.uri && place.offset >= whole.offset && end <= whole.offset + whole.length;
}

/** A file as its editor shows it. */
export interface FileSurvey {
    readonly findings: readonly Finding[];
    readonly planned: readonly PlannedStep[];
    readonly runs: readonly PlannedRun[];
}

/** A plan that could not be made is said at the recipe, and the text's own findings stay. */
function failed(recipe: Recipe, error: unknown): Finding {
    const message = phrase`This recipe could not be worked out: ${error instanceof Error ? error.message.split('\n')[0] : String(error)}`;
    return { rule: 'not-worked-out', severity: 'warning', message, where: recipe.where, related: [], fixes: [] };
}
