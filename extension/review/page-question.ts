import * as vscode from 'vscode';
import type { PageAnswer } from '../../shared/view/protocol';
import { requests } from '../../shared/view/requests';
import type { RecipeServer } from '../server';
import { type AskedPage, startsGit } from './asked-page';

/** How the server is asked for a page. */
export interface PageQuestion {
    readonly ask: (server: RecipeServer, token: vscode.CancellationToken) => Promise<PageAnswer | undefined>;
    /** What the panel is called: by the file's name until the server has said whom it is about. */
    readonly title: (name: string) => string;
    /** What is being done meanwhile. */
    readonly doing: string;
    /** Files of which a change makes the page anew. */
    readonly watched: readonly string[] | 'every file';
    /** Whether git is asked for earlier versions: then a new commit makes the page anew too. */
    readonly ofRevisions: boolean;
}

export function questionOf(asked: AskedPage): PageQuestion {
    switch (asked.kind) {
        case 'compare': {
            const { kind, ...params } = asked;
            const beside = asked.revision === undefined ? '' : vscode.l10n.t(' with {0}', shortly(asked.revision));
            return {
                ask: (server, token) => server.ask(requests.compare, params, token),
                title: (name) => vscode.l10n.t('Compare: {0}{1}', name, beside),
                doing: vscode.l10n.t('Comparing both versions'),
                watched: [asked.uri, ...(asked.before === undefined ? [] : [asked.before])],
                ofRevisions: startsGit(asked),
            };
        }
        case 'variants': {
            const { kind, ...params } = asked;
            return {
                ask: (server, token) => server.ask(requests.table, params, token),
                title: (name) => vscode.l10n.t('Variants: {0}', name),
                doing: vscode.l10n.t('Laying the variants side by side'),
                watched: 'every file',
                ofRevisions: false,
            };
        }
        case 'week': {
            const { uri, start } = asked;
            return {
                ask: (server, token) => server.ask(requests.week, { uri, start, ...hoursOf(uri) }, token),
                title: (name) => vscode.l10n.t('Week: {0}', name),
                doing: vscode.l10n.t('Planning the week'),
                watched: 'every file',
                ofRevisions: false,
            };
        }
        case 'season': {
            const { kind, ...params } = asked;
            return {
                ask: (server, token) => server.ask(requests.season, params, token),
                title: (name) => (name === '' ? vscode.l10n.t('Season') : vscode.l10n.t('Season: {0}', name)),
                doing: vscode.l10n.t('Summing up the season'),
                watched: 'every file',
                ofRevisions: false,
            };
        }
        case 'history': {
            const { kind, ...params } = asked;
            const present = vscode.workspace.isTrusted ? {} : { present: true };
            return {
                ask: (server, token) => server.ask(requests.history, { ...params, ...present }, token),
                title: (name) => vscode.l10n.t('Runs: {0}', name),
                doing: vscode.l10n.t('Looking up what was planned then'),
                watched: [asked.uri],
                ofRevisions: true,
            };
        }
    }
}

/** Pairs of hands, and the days on which nobody works, as the settings say. */
function hoursOf(uri: string): { makers: number; closed: number[] } {
    const settings = vscode.workspace.getConfiguration('kerfbook.week', vscode.Uri.parse(uri));
    const makers = settings.get<unknown>('makers');
    const closed = settings.get<unknown>('closedDays');
    return {
        makers: typeof makers === 'number' && makers >= 1 ? Math.floor(makers) : 1,
        closed: weekdays.flatMap((day, index) => (Array.isArray(closed) && closed.includes(day) ? [index] : [])),
    };
}

const weekdays = ['sunday', 'monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday'];

function shortly(revision: string): string {
    return /^[0-9a-f]{40,}$/.test(revision) ? revision.slice(0, 8) : revision;
}
