import type { LangiumDocument } from 'langium';
import type { CancellationToken, Connection } from 'vscode-languageserver';
import { rewriteNumber } from '../language/editing/rewrite-number';
import { writeReached } from '../language/editing/write-reached';
import { phrase } from '../shared/recipe/phrase';
import type { Recipe } from '../shared/recipe/recipe';
import type { BenchParams, PictureParams, RewriteParams, WrittenAnswer } from '../shared/view/protocol';
import { type Request, requests } from '../shared/view/requests';
import type { SentPicture } from '../shared/view/sent-picture';
import { onRequest } from './protocol/on-request';
import type { Workshop } from './workshop/workshop';
import { buildFiles } from './writing/build-files';
import { withWrittenNumbers } from './written-numbers';

interface Found {
    readonly document: LangiumDocument;
    readonly recipe: Recipe;
}

/** Answers what the editor asks beyond the language server protocol. */
export function answerRequests(connection: Connection, workshop: Workshop): void {
    const answer = <Params extends BenchParams, Answer>(
        request: Request<Params, Answer | null>,
        work: (found: Found, params: Params, token: CancellationToken) => Promise<Answer | null>,
    ): void => {
        onRequest(connection, request, async (params, token) => {
            const found = await find(workshop, params, token);
            return found === undefined ? null : work(found, params, token);
        });
    };
    answer(requests.bench, (found, params) => bench(workshop, found, params));
    answer(requests.checklist, ({ recipe }) => workshop.ask({ do: 'checklist', recipe }));
    answer(requests.build, ({ document, recipe }) => buildFiles(workshop, document, recipe));
    answer(requests.section, ({ recipe }, { frame, blank, y }) => workshop.ask({ do: 'section', recipe, frame, blank, y }));
    answer(requests.column, ({ recipe }, { frame, blank, x, y }) => workshop.ask({ do: 'column', recipe, frame, blank, x, y }));
    answer(requests.round, ({ recipe }, { frame, blank, hidden = [] }) =>
        workshop.ask({ do: 'round', recipe, frame, blank, hidden }),
    );
    answer(requests.toolpath, ({ recipe }, { step }) => workshop.ask({ do: 'toolpath', recipe, step }));
    onRequest(connection, requests.rewrite, async (params, token) => {
        const document = await workshop.linked(params.uri, token);
        return document === undefined ? null : rewrite(workshop, document, params);
    });
    onRequest(connection, requests.reached, async ({ uri, offset, depth, passes }, token) => {
        const document = await workshop.linked(uri, token);
        if (document === undefined) return null;
        const found = writeReached(document, offset, { depth, passes }, workshop.services);
        return 'problem' in found ? found : { uri: document.uri.toString(), version: document.textDocument.version, ...found };
    });
    answer(requests.press, ({ document, recipe }, { step, progress }, token) => {
        const tell = (part: number): void => void connection.sendNotification('$/progress', { token: progress, value: part });
        return workshop.ask({ do: 'press', recipe, step }, `press ${document.uri.toString()}#${recipe.name} ${step}`, {
            ...(progress === undefined ? {} : { tell }),
            onCancel: (giveUp) => token.onCancellationRequested(giveUp),
        });
    });
}

async function find(workshop: Workshop, params: BenchParams, token: CancellationToken): Promise<Found | undefined> {
    const document = await workshop.linked(params.uri, token);
    if (document === undefined) return undefined;
    const recipe = workshop.recipe(document, params.recipe, params.offset);
    return recipe === undefined ? undefined : { document, recipe };
}

async function bench(workshop: Workshop, { document, recipe }: Found, { had, soon }: PictureParams): Promise<SentPicture> {
    const all = workshop.recipes(document);
    // What is wrong outside of every recipe, such as a `use` that cannot be read, is the cause of much within.
    const findings = workshop
        .textFindings(document)
        .filter(
            ({ where, severity }) =>
                inside(where.offset, recipe) || (severity === 'error' && !all.some((each) => inside(where.offset, each))),
        );
    const broken = findings.find((finding) => finding.rule === 'syntax');
    const setting = {
        uri: document.uri.toString(),
        textVersion: document.textDocument.version,
        recipes: all.map(({ name, title }) => ({ name, title })),
        ...(broken === undefined ? {} : { stale: broken.message }),
    };
    const text = document.textDocument.getText();
    const view = await workshop.ask(
        {
            do: 'bench',
            recipe,
            setting,
            textFindings: findings,
            ...(had === undefined ? {} : { had }),
            ...(soon === undefined ? {} : { soon }),
        },
        `bench ${setting.uri}#${recipe.name}`,
    );
    return withWrittenNumbers(view, text, recipe.whole);
}

/** Places are those of the text that the picture is of. */
function rewrite({ services }: Workshop, document: LangiumDocument, params: RewriteParams): WrittenAnswer {
    const { version } = document.textDocument;
    if (params.textVersion !== version) return { problem: phrase`The text was changed meanwhile. Nothing was written.` };
    const found = rewriteNumber(document, params, String(params.text), services);
    return 'problem' in found ? found : { uri: document.uri.toString(), version, edits: found.edits };
}

function inside(offset: number, { whole }: Recipe): boolean {
    return whole.offset <= offset && offset <= whole.offset + whole.length;
}
