import { URI, UriUtils } from 'langium';
import type { ExecuteCommandHandler } from 'langium/lsp';
import * as v from 'valibot';
import {
    type CancellationToken,
    type Connection,
    ErrorCodes,
    LSPErrorCodes,
    MessageType,
    ResponseError,
} from 'vscode-languageserver';
import { isBuiltIn } from '../../language/built-in';
import type { KerfLanguageServer } from '../../language/workspace/language-server';
import { dayOf } from '../../shared/quantity/calendar';
import { type Message, phrase } from '../../shared/recipe/phrase';
import type { WritingAnswer } from '../../shared/view/protocol';
import { type Request, requests } from '../../shared/view/requests';
import { runLines } from '../../shared/view/run-lines';
import { Cancelled } from '../engine/jobs';
import { answerOf } from '../protocol/on-request';
import { refused } from '../protocol/refused';
import type { Workshop } from '../workshop/workshop';
import { NotDone } from './not-done';
import { fillOf, namedOf, pickedOf } from './picked';
import { type CommandName, type Taken, taken } from './shapes';

/** What has been done: told in a message, answered to whoever gave the command, and shown where the client can. */
interface Done {
    readonly message: Message;
    readonly isPartial?: boolean;
    /** Address of what came of it. */
    readonly show: string;
    /** Whether it is for a browser, and not for the editor. */
    readonly external?: boolean;
    readonly answer: unknown;
}

type Ask = <Params, Answer>(request: Request<Params, Answer>, params: NoInfer<Params>) => Promise<Answer | null>;

/**
 * What an editor can have done by name (`workspace/executeCommand`), for those that have no buttons of their own. All of it is
 * done by the requests that the extension's buttons send, so that both do the same; nothing is written outside of the workspace.
 */
export class Commands implements ExecuteCommandHandler {
    readonly commands = Object.keys(taken);

    /** @param workshop known only once there are services, which name this */
    constructor(
        private readonly connection: Connection,
        private readonly workshop: () => Workshop,
    ) {}

    async executeCommand(name: string, [given]: readonly unknown[], token: CancellationToken): Promise<unknown> {
        const ask: Ask = (request, params) => answerOf(this.connection, request, params, token);
        const done = await this.attempt(name, given, ask);
        const type = done.isPartial === true ? MessageType.Warning : MessageType.Info;
        void this.connection.sendNotification('window/showMessage', { type, message: done.message });
        const { showsDocuments } = (this.workshop().services.shared.lsp.LanguageServer as KerfLanguageServer).client;
        if (showsDocuments) {
            const how = done.external === true ? { external: true } : { takeFocus: true };
            void this.connection.window.showDocument({ uri: done.show, ...how }).catch(refused);
        }
        return done.answer;
    }

    private async attempt(name: string, given: unknown, ask: Ask): Promise<Done> {
        try {
            switch (name) {
                case 'kerfbook.build':
                    return await this.build(fitting(name, given), ask);
                case 'kerfbook.coupon':
                    return await this.coupon(fitting(name, given), ask);
                case 'kerfbook.finishRun':
                    return await this.finishRun(fitting(name, given), ask);
                case 'kerfbook.new':
                    return await this.begin(fitting(name, given), ask);
                default:
                    throw new ResponseError(ErrorCodes.InvalidParams, `There is no command ${name}.`);
            }
        } catch (error) {
            if (error instanceof Cancelled)
                throw new ResponseError(
                    LSPErrorCodes.RequestCancelled,
                    phrase`A newer question took the place of this one. Try it again.`,
                );
            if (error instanceof NotDone) throw new ResponseError(LSPErrorCodes.RequestFailed, error.message);
            throw error;
        }
    }

    private async build({ uri, recipe, offset, ...wish }: Taken<'kerfbook.build'>, ask: Ask): Promise<Done> {
        const name = await this.recipeOf(uri, recipe, offset);
        const answer = await ask(requests.writeRecipe, { uri, recipe: name, ...wish });
        if (answer === null) throw notThere(name);
        return this.written(answer, 'job-sheet.html', true);
    }

    private async coupon({ uri, sheet, laser, ...wish }: Taken<'kerfbook.coupon'>, ask: Ask): Promise<Done> {
        const choices = await ask(requests.couponChoices, { uri });
        if (choices === null) throw new NotDone(phrase`There is no such file in the workspace.`);
        const of = {
            uri,
            sheet: namedOf(phrase`board or veneer`, sheet, choices.sheets),
            laser: namedOf(phrase`laser`, laser, choices.lasers),
        };
        const answer = await ask(requests.writeCoupon, { ...of, ...wish });
        if (answer === null) throw new NotDone(phrase`There is no such file in the workspace.`);
        return this.written(answer, 'coupon.kerf', false);
    }

    /** Every step as it was planned, with the figures of the day left to be written behind them. */
    private async finishRun({ uri, recipe, offset, lines, notes }: Taken<'kerfbook.finishRun'>, ask: Ask): Promise<Done> {
        const name = await this.recipeOf(uri, recipe, offset);
        const checklist = await ask(requests.checklist, { uri, recipe: name });
        if (checklist === null) throw notThere(name);
        const { items, revision, laser } = checklist;
        const done = Object.fromEntries(items.map(({ id, burnt }) => [id, { ...(burnt !== undefined && { burnt }) }]));
        const answer = await ask(requests.writeRun, {
            uri,
            recipe: name,
            date: dayOf(new Date()),
            revision,
            ...(laser !== undefined && { laser }),
            lines:
                lines ??
                runLines(
                    done,
                    items.map(({ id }) => id),
                ),
            notes: notes ?? [],
        });
        if (answer === null) throw notThere(name);
        if ('problem' in answer) throw new NotDone(answer.problem);
        const message = phrase`Run of ${checklist.title} written to ${this.pathOf(answer.uri)}. Write what was measured behind its steps.`;
        return { message, show: answer.uri, answer };
    }

    private async begin(wish: Taken<'kerfbook.new'>, ask: Ask): Promise<Done> {
        const { title, technique, board, veneer, laser, fill, art, size } = wish;
        const folder = wish.folder ?? this.folders()[0];
        if (folder === undefined) throw new NotDone(phrase`Open a folder first, or say in which folder the recipe is to lie.`);
        const where = { folder, files: this.known() };
        const choices = await ask(requests.newRecipeChoices, where);
        if (choices === null) throw new NotDone(phrase`There is nothing to begin a recipe with.`);
        if (fill !== undefined && technique !== 'filled')
            throw new NotDone(phrase`A fill is for the technique filled: nothing else is filled.`);
        const answer = await ask(requests.newRecipe, {
            ...where,
            title,
            technique,
            board: pickedOf(phrase`board`, board, choices.boards),
            laser: pickedOf(phrase`laser`, laser, choices.lasers),
            ...(veneer !== undefined && { veneer: pickedOf(phrase`veneer`, veneer, choices.veneers) }),
            ...(fill !== undefined && fillOf(fill, choices)),
            ...(art !== undefined && { art }),
            ...(size !== undefined && { size }),
        });
        if (answer === null) throw new NotDone(phrase`There is nothing to begin a recipe with.`);
        if ('problem' in answer) throw new NotDone(answer.problem);
        const problem = await ask(requests.writeNew, { folder, files: [...answer.files] });
        if (problem !== null) throw new NotDone(phrase`${problem}`);
        const uris = answer.files.map(({ path }) => UriUtils.joinPath(URI.parse(folder), path).toString());
        const list = uris.map((uri) => this.pathOf(uri)).join(', ');
        const message = phrase`${list} written. ${answer.findings.join(' ')}`.trim() as Message;
        return { message, isPartial: answer.findings.length > 0, show: uris[0]!, answer: { uris, findings: answer.findings } };
    }

    private written(answer: WritingAnswer, file: string, external: boolean): Done {
        const { folder, written, problems } = answer;
        const [told, left] = [problems.slice(0, 3).join(' '), problems.length - 3];
        const more = left > 0 ? phrase` So it is with ${left} more.` : '';
        if (written === 0) throw new NotDone(phrase`Nothing was written. ${told}${more}`);
        const message = `${phrase`Files written to ${this.pathOf(folder)}: ${written}.`} ${told}${more}`.trim() as Message;
        return { message, isPartial: problems.length > 0, show: `${folder}/${file}`, external, answer };
    }

    private async recipeOf(uri: string, name: string | undefined, offset: number | undefined): Promise<string> {
        const document = await this.workshop().linked(uri);
        if (document === undefined) throw new NotDone(phrase`There is no such file in the workspace.`);
        const here = offset === undefined ? undefined : this.workshop().recipe(document, undefined, offset)?.name;
        return namedOf(
            phrase`recipe`,
            name ?? here,
            this.workshop()
                .recipes(document)
                .map((recipe) => recipe.name),
        );
    }

    private folders(): string[] {
        return (this.workshop().services.shared.workspace.WorkspaceManager.workspaceFolders ?? []).map(({ uri }) => uri);
    }

    private known(): string[] {
        const { LangiumDocuments } = this.workshop().services.shared.workspace;
        return LangiumDocuments.all
            .map(({ uri }) => uri.toString())
            .filter((uri) => !isBuiltIn(uri))
            .toArray();
    }

    /** From the folder of the workspace in which it lies. */
    private pathOf(uri: string): string {
        const top = this.folders().find((folder) => uri.startsWith(`${folder.replace(/\/$/, '')}/`));
        return top === undefined ? uri : UriUtils.relative(URI.parse(top), URI.parse(uri));
    }
}

function notThere(recipe: string): NotDone {
    return new NotDone(phrase`There is no recipe called “${recipe}” in this file.`);
}

function fitting<Name extends CommandName>(name: Name, given: unknown): Taken<Name> {
    const read = v.safeParse(taken[name] as v.GenericSchema<unknown, Taken<Name>>, given);
    if (read.success) return read.output;
    const places = read.issues.map((issue) => `${v.getDotPath(issue) ?? 'all'}: ${issue.message}`).join(' ');
    throw new ResponseError(ErrorCodes.InvalidParams, `These are not the arguments of ${name}. ${places}`);
}
