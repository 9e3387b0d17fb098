import { type AstNode, AstUtils } from 'langium';
import type { Laser } from '../../shared/recipe/stock';
import * as ast from '../generated/ast';
import { laserOf } from '../lowering/stock';
import { mergedItems } from '../variants/merge';
import { isLine } from '../vocabulary/lookup';

/** The laser that a number under `power`, `least power` or in a row of a coupon or a run is a setting of, if its power is known. */
export function laserSet(number: AstNode): Laser | undefined {
    const line = number.$container;
    const isSetting =
        (ast.isFigure(line) && isLine(line, 'power', 'leastpower')) ||
        ((ast.isBurn(line) || ast.isBurnt(line) || ast.isCutTest(line)) && number.$containerProperty === 'power');
    const laser = isSetting ? laserNode(number) : undefined;
    const isFull = laser?.items.some((item) => ast.isFigure(item) && isLine(item, 'power') && item.value === number);
    return laser === undefined || isFull === true ? undefined : laserOf(laser);
}

function laserNode(node: AstNode): ast.Laser | undefined {
    const laser = AstUtils.getContainerOfType(node, ast.isLaser);
    const coupon = AstUtils.getContainerOfType(node, ast.isCoupon);
    const run = AstUtils.getContainerOfType(node, ast.isRun);
    const recipe = AstUtils.getContainerOfType(node, ast.isRecipe) ?? run?.recipe?.ref;
    const ofRun = run?.items.find(ast.isLaserUse)?.laser?.ref;
    return laser ?? coupon?.laser?.ref ?? ofRun ?? (recipe && mergedItems(recipe).find(ast.isLaserUse)?.laser?.ref);
}
