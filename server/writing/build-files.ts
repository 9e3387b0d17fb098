import type { LangiumDocument } from 'langium';
import { markOf } from '../../language/run-edits';
import { phrase } from '../../shared/recipe/phrase';
import type { Recipe } from '../../shared/recipe/recipe';
import type { BuildAnswer } from '../../shared/view/protocol';
import type { BuildJob } from '../engine/jobs';
import type { Workshop } from '../workshop/workshop';

/** @param start when the work begins, a moment of quantity/calendar */
export function buildJob(workshop: Workshop, document: LangiumDocument, recipe: Recipe, start?: number): BuildJob {
    const mark = markOf(document, recipe.name);
    return {
        ...{ do: 'build', recipe, textFindings: workshop.textFindings(document) },
        ...(start === undefined ? {} : { start }),
        ...(mark === undefined ? {} : { mark }),
    };
}

/** The files of a recipe for machine and bench, and what is to be said of them. */
export async function buildFiles(workshop: Workshop, document: LangiumDocument, recipe: Recipe): Promise<BuildAnswer> {
    const textFindings = workshop.textFindings(document);
    const sheets = await workshop.ask(buildJob(workshop, document, recipe));
    const trade = await workshop.ask({ do: 'examine', recipe });
    const wrong = [...textFindings, ...trade].filter((finding) => finding.severity === 'error');
    const open =
        wrong.length === 0
            ? []
            : [phrase`${wrong.length} error${wrong.length === 1 ? '' : 's'} still open: ${wrong[0]!.message}`];
    return { files: sheets.files, problems: [...open, ...sheets.problems] };
}
