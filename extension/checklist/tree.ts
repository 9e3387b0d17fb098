import * as vscode from 'vscode';
import { showTime } from '../../shared/quantity/show';
import type { Checklist, ChecklistItem } from '../../shared/view/protocol';
import type { Ticks } from './ticks';

export type Node =
    | { readonly kind: 'cautions'; readonly texts: readonly string[] }
    | { readonly kind: 'caution'; readonly text: string }
    | { readonly kind: 'step'; readonly item: ChecklistItem };

/** The checklist as the native tree draws it: cautions first, folded, then a checkbox for every step. */
export class ChecklistTree implements vscode.TreeDataProvider<Node> {
    private readonly changed = new vscode.EventEmitter<Node | undefined>();
    readonly onDidChangeTreeData = this.changed.event;
    private nodes: readonly Node[] = [];
    private job = '';
    private ticks: Ticks = {};

    show(job: string, checklist: Checklist | undefined, ticks: Ticks): void {
        const steps: Node[] = (checklist?.items ?? []).map((item) => ({ kind: 'step', item }));
        const cautions: Node[] = checklist?.cautions.length ? [{ kind: 'cautions', texts: checklist.cautions }] : [];
        this.nodes = [...cautions, ...steps];
        this.job = job;
        this.ticks = ticks;
        this.changed.fire(undefined);
    }

    /** Draws again what changes by itself: the waits that are running. */
    refreshWaits(ticks: Ticks): void {
        this.ticks = ticks;
        for (const node of this.nodes) {
            if (node.kind === 'step' && ticks[node.item.id]?.ends !== undefined) this.changed.fire(node);
        }
    }

    getChildren(node?: Node): Node[] {
        if (node === undefined) return [...this.nodes];
        return node.kind === 'cautions' ? node.texts.map((text) => ({ kind: 'caution', text })) : [];
    }

    getTreeItem(node: Node): vscode.TreeItem {
        if (node.kind === 'step') return this.stepItem(node, Date.now());
        if (node.kind === 'caution') {
            const item = new vscode.TreeItem(node.text);
            item.tooltip = node.text;
            return item;
        }
        const item = new vscode.TreeItem(vscode.l10n.t('Before you start'), vscode.TreeItemCollapsibleState.Collapsed);
        item.id = `${this.job}/cautions`;
        item.iconPath = new vscode.ThemeIcon('shield');
        item.description = `${node.texts.length} ${node.texts.length === 1 ? 'caution' : 'cautions'}`;
        return item;
    }

    private stepItem(node: Extract<Node, { kind: 'step' }>, now: number): vscode.TreeItem {
        const { id, label, detail, tooltip, measures = [], measureAfter } = node.item;
        const tick = this.ticks[id];
        const item = new vscode.TreeItem(label);
        item.id = `${this.job}/${id}`;
        item.contextValue = measures.length > 0 ? 'step-check' : measureAfter === undefined ? 'step' : 'step-passes';
        const measured = (tick?.measured ?? []).map(({ words }) => words).join(', ');
        item.tooltip = [tooltip, measured === '' ? '' : vscode.l10n.t('Measured: {0}', measured)]
            .filter((line) => line !== '')
            .join('\n\n');
        item.description = [measured === '' ? '' : vscode.l10n.t('measured {0}', measured), waitText(tick?.ends, now), detail]
            .filter((part) => part !== '')
            .join(' · ');
        item.checkboxState = {
            state: tick === undefined ? vscode.TreeItemCheckboxState.Unchecked : vscode.TreeItemCheckboxState.Checked,
            tooltip:
                tick === undefined
                    ? vscode.l10n.t('Not done yet')
                    : vscode.l10n.t('Done {0}', new Date(tick.at).toLocaleString()),
            // Its state is told by the box itself.
            accessibilityInformation: { label: vscode.l10n.t('Done: {0}', label), role: 'checkbox' },
        };
        if (tick?.ends !== undefined) {
            const over = tick.ends <= now;
            item.iconPath = new vscode.ThemeIcon(
                over ? 'bell' : 'watch',
                over ? new vscode.ThemeColor('charts.green') : undefined,
            );
        }
        item.command = { command: 'kerfbook.goToStep', title: vscode.l10n.t('Go to Step'), arguments: [node] };
        item.accessibilityInformation = {
            label: `${label}, ${tick === undefined ? vscode.l10n.t('not done') : 'done'}, ${item.description}`,
        };
        return item;
    }
}

function waitText(ends: number | undefined, now: number): string {
    if (ends === undefined) return '';
    return ends <= now ? vscode.l10n.t('wait is over') : `${showTime((ends - now) / 1000)} left`;
}
