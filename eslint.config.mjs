import js from '@eslint/js';
import prettier from 'eslint-config-prettier';
import astro from 'eslint-plugin-astro';
import svelte from 'eslint-plugin-svelte';
import { defineConfig } from 'eslint/config';
import globals from 'globals';
import ts from 'typescript-eslint';

const noRandom = {
  object: 'Math',
  property: 'random',
  message: 'The same input must give the same page: pass a seed or an index instead.',
};

const fromText = 'It turns text into markup: use textContent or elements.';
const noMarkupFromText = [
  {
    selector: 'MemberExpression[property.name=/^(innerHTML|insertAdjacentHTML|setHTMLUnsafe)$/]',
    message: fromText,
  },
  {
    selector: 'AssignmentExpression[left.property.name=/^(outerHTML|srcdoc)$/]',
    message: fromText,
  },
];

const noWaysRound = [
  {
    selector: 'TSAsExpression > TSAnyKeyword',
    message: 'Say what the value is, or check it: "as any" hides the fault.',
  },
];

const everyTestRuns = [
  {
    selector:
      'MemberExpression[object.name=/^(describe|it|test|suite)$/][property.name=/^(only|skip|skipIf|runIf|todo|fails)$/]',
    message: 'Every test runs, every time: mend it or take it out.',
  },
];

export default defineConfig(
  { ignores: ['dist/', '.astro/', '.reports/', 'node_modules/'] },
  js.configs.recommended,
  ts.configs.strictTypeChecked,
  ts.configs.stylisticTypeChecked,
  svelte.configs.recommended,
  astro.configs.recommended,
  {
    languageOptions: {
      globals: { ...globals.browser, ...globals.node },
      parserOptions: { projectService: true, extraFileExtensions: ['.svelte', '.astro'] },
    },
    linterOptions: { reportUnusedDisableDirectives: 'error' },
    rules: {
      eqeqeq: 'error',
      'no-console': 'error',
      'no-warning-comments': ['error', { terms: ['todo', 'fixme', 'xxx', 'hack'] }],
      'no-restricted-properties': ['error', noRandom],
      'no-restricted-syntax': ['error', ...noMarkupFromText, ...noWaysRound],
      '@typescript-eslint/consistent-type-imports': 'error',
      // Interfaces and types are each used where they read better.
      '@typescript-eslint/consistent-type-definitions': 'off',
      '@typescript-eslint/no-confusing-void-expression': ['error', { ignoreArrowShorthand: true }],
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      // An empty setting counts as none.
      '@typescript-eslint/prefer-nullish-coalescing': [
        'error',
        { ignorePrimitives: { string: true } },
      ],
      // Of the two ways to say it, the one that no rule forbids.
      '@typescript-eslint/non-nullable-type-assertion-style': 'off',
      // A getter or an empty default is often clearer than its alternative.
      '@typescript-eslint/no-empty-function': 'off',
    },
  },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: { parserOptions: { parser: ts.parser } },
    rules: {
      'svelte/no-at-html-tags': 'error',
      // Pages are plain addresses; there is no router to resolve them.
      'svelte/no-navigation-without-resolve': 'off',
      // A prop destructured by $props() is reassigned by $bindable.
      'prefer-const': 'off',
      'svelte/prefer-const': ['error', { excludedRunes: ['$props', '$derived'] }],
    },
  },
  {
    // The type-aware rules see no types through an Astro template; `astro check` covers those.
    files: ['**/*.astro', '**/*.astro/*.ts', '*.astro/*.ts'],
    extends: [ts.configs.disableTypeChecked],
    rules: {
      // Astro's set:html is for markup that the build itself made: typeset formulas, rendered Markdown.
      'astro/no-set-html-directive': 'off',
      '@typescript-eslint/no-unused-vars': ['error', { varsIgnorePattern: '^Props$' }],
    },
  },
  {
    files: ['**/*.{js,mjs,cjs}'],
    extends: [ts.configs.disableTypeChecked],
    rules: { '@typescript-eslint/no-require-imports': 'off', 'no-var': 'off' },
  },
  {
    files: ['src/formula/**', 'src/optics/**', 'src/sitting/**', 'src/drawing/**'],
    rules: {
      'no-restricted-globals': [
        'error',
        ...['window', 'document', 'localStorage', 'fetch', 'process', 'console', 'Date'].map(
          (name) => ({ name, message: 'The sums are pure: no page, no files, no clock.' }),
        ),
      ],
    },
  },
  {
    files: ['src/site/**', 'tests/**', '*.config.*'],
    rules: { 'no-console': 'off' },
  },
  {
    files: ['tests/**'],
    rules: {
      'no-restricted-syntax': ['error', ...noMarkupFromText, ...noWaysRound, ...everyTestRuns],
    },
  },
  prettier,
  svelte.configs.prettier,
);
