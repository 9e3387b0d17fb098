import * as vscode from 'vscode';
import { offerArt } from './art/offer-art';
import { watchBenches } from './bench/benches';
import { watchChecklist } from './checklist/checklist';
import { TickBook } from './checklist/ticks';
import { offerCoupons } from './coupon/offer-coupons';
import { CurrentRecipe } from './current-recipe';
import { offerExplanations } from './explain';
import { offerGuides } from './guides';
import { offerReviews } from './review/offer-reviews';
import type { RecipeServer } from './server';
import { showServerStatus } from './server-status';
import { offerNewRecipe } from './starting/new-recipe';
import { offerSamples } from './starting/sample-workshop';
import { showStatus } from './status';
import { offerTasks } from './tasks/offer-tasks';
import { tickWalkthrough } from './tick-walkthrough';
import { offerWriting } from './write/write-files';

/** Everything the extension offers, whichever way its server runs. */
export async function activateWith(server: RecipeServer, context: vscode.ExtensionContext): Promise<void> {
    const current = new CurrentRecipe(server, context.workspaceState);
    const book = new TickBook(context.workspaceState);
    context.subscriptions.push(
        server,
        current,
        offerExplanations(current),
        offerWriting(server, current),
        offerGuides(context),
        offerArt(server),
        offerNewRecipe(server),
        offerTasks(server),
        offerCoupons(server, current),
        offerReviews(server, current, context.workspaceState),
        showStatus(current),
        showServerStatus(server),
        watchBenches(server, current, book, context.extensionUri),
        watchChecklist(server, current, book),
        vscode.commands.registerCommand('kerfbook.restartServer', () => server.restart()),
    );
    void tickWalkthrough();
    await server.start();
    context.subscriptions.push(await offerSamples(context));
}
