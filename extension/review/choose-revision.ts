import * as vscode from 'vscode';
import type { RevisionChoice } from '../../shared/view/protocol';
import { requests } from '../../shared/view/requests';
import type { RecipeServer } from '../server';

interface RevisionItem extends vscode.QuickPickItem {
    readonly revision?: string;
}

/** Asks for a revision: one of those that changed the file, a branch, a tag, or anything that git understands. */
export async function chooseRevision(server: RecipeServer, uri: vscode.Uri): Promise<string | undefined> {
    const answer = await server.ask(requests.revisions, { uri: uri.toString() });
    if (answer === undefined) return undefined;
    if ('problem' in answer) {
        void vscode.window.showInformationMessage(answer.problem);
        return undefined;
    }
    const items = itemsOf(answer.revisions);
    const pick = vscode.window.createQuickPick<RevisionItem>();
    pick.title = vscode.l10n.t('Compare with which revision?');
    pick.placeholder = vscode.l10n.t('A commit of this file, a branch, a tag, or any revision that git understands');
    pick.matchOnDescription = true;
    pick.items = items;
    // What is typed is offered too, since it may be a revision that is in no list.
    pick.onDidChangeValue((value) => {
        const typed = value.trim();
        pick.items =
            typed === ''
                ? items
                : [...items, { label: typed, description: vscode.l10n.t('as typed'), revision: typed, alwaysShow: true }];
    });
    return new Promise((resolve) => {
        pick.onDidAccept(() => {
            resolve(pick.selectedItems[0]?.revision);
            pick.hide();
        });
        pick.onDidHide(() => {
            resolve(undefined);
            pick.dispose();
        });
        pick.show();
    });
}

const headings = { commit: vscode.l10n.t('commits that changed this file'), branch: 'branches', tag: 'tags' } as const;
const icons = { commit: 'git-commit', branch: 'git-branch', tag: 'tag' } as const;

function itemsOf(revisions: readonly RevisionChoice[]): RevisionItem[] {
    return (['commit', 'branch', 'tag'] as const).flatMap((kind) => {
        const some = revisions.filter((each) => each.kind === kind);
        if (some.length === 0) return [];
        const heading = { label: headings[kind], kind: vscode.QuickPickItemKind.Separator };
        return [
            heading,
            ...some.map(({ revision, name, day, subject }) => ({
                label: `$(${icons[kind]}) ${name}`,
                description: `${day} ${subject}`,
                revision,
            })),
        ];
    });
}
