import { describe, expect, it } from 'vitest';
import { glassNamed } from '../../../../core/glass/glasses.ts';
import { BUILDS } from '../../../../core/lens/made/kinds.ts';
import { glassesOf, nameOf, recipesOf } from '../../../../core/lens/made/recipe.ts';

describe('the recipes of a class', () => {
  it('of single lenses have a crown and nothing else', () => {
    for (const recipe of recipesOf('singlet')) {
      expect(recipe).not.toHaveProperty('flint');
      expect(recipe.leading).toBe('crown');
      expect(nameOf(recipe)).toBe(`single lens, ${recipe.crown}`);
    }
    expect(recipesOf('singlet')).toHaveLength(BUILDS.singlet.glasses.length);
  });
  it('of achromats have each pair both ways about, crown first', () => {
    const recipes = recipesOf('cemented-achromat');
    expect(recipes.map((r) => r.leading).slice(0, 4)).toEqual(['crown', 'flint', 'crown', 'flint']);
    expect(recipes[1]).toEqual({ ...recipes[0], leading: 'flint' });
    expect(nameOf(recipes[1] as never)).toMatch(/^cemented, .+ and .+, flint toward the camera lens$/);
  });
});

describe('the glasses of a recipe', () => {
  const pair = { kind: 'cemented-achromat', crown: 'N-BK7', flint: 'N-SF5' } as const;
  it('stand in the order of the listing', () => {
    const [crown, flint] = [glassNamed('N-BK7'), glassNamed('N-SF5')];
    expect(glassesOf({ ...pair, leading: 'crown' })).toEqual([crown, flint]);
    expect(glassesOf({ ...pair, leading: 'flint' })).toEqual([flint, crown]);
    expect(glassesOf({ kind: 'singlet', crown: 'N-BK7', leading: 'crown' })).toEqual([crown]);
  });
  it('are none of a name that is no glass, and two that disperse differently', () => {
    expect(glassesOf({ ...pair, flint: 'N-SF555', leading: 'crown' })).toBe('no glass is known by the name of N-SF555');
    expect(glassesOf({ ...pair, flint: 'air', leading: 'crown' })).toBe('no glass is known by the name of air');
    expect(glassesOf({ ...pair, crown: 'N-SF5', leading: 'crown' })).toBe(
      'N-SF5 disperses no less than N-SF5: together they make no achromat',
    );
  });
});
