import * as vscode from 'vscode';
import { type CompareParams, type HistoryParams, method, type TableParams } from '../../shared/view/protocol';
import { type AskedPage, startsGit } from './asked-page';

/** How the server is asked for a page. */
export interface PageQuestion {
    readonly method: string;
    readonly params: CompareParams | TableParams | HistoryParams;
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
    const { kind, ...params } = asked;
    switch (asked.kind) {
        case 'compare': {
            const beside = asked.revision === undefined ? '' : ` with ${shortly(asked.revision)}`;
            return {
                method: method.compare,
                params,
                title: (name) => `Compare: ${name}${beside}`,
                doing: 'Comparing both versions',
                watched: [asked.uri, ...(asked.before === undefined ? [] : [asked.before])],
                ofRevisions: startsGit(asked),
            };
        }
        case 'variants':
            return {
                method: method.table,
                params,
                title: (name) => `Variants: ${name}`,
                doing: 'Laying the variants side by side',
                watched: 'every file',
                ofRevisions: false,
            };
        case 'history':
            return {
                method: method.history,
                params: { ...params, ...(!vscode.workspace.isTrusted && { present: true }) },
                title: (name) => `Runs: ${name}`,
                doing: 'Looking up what was planned then',
                watched: [asked.uri],
                ofRevisions: true,
            };
    }
}

function shortly(revision: string): string {
    return /^[0-9a-f]{40,}$/.test(revision) ? revision.slice(0, 8) : revision;
}
