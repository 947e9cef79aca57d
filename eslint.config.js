import js from '@eslint/js';
import tseslint from 'typescript-eslint';

export default tseslint.config(
  // AssemblyScript is not TypeScript: its own compiler checks it.
  { ignores: ['dist', 'out', 'node_modules', 'src/**/assembly'] },
  js.configs.recommended,
  ...tseslint.configs.strict,
  {
    rules: {
      eqeqeq: 'error',
      'prefer-const': 'error',
      'no-console': 'error',
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', ignoreRestSiblings: true }],
    },
  },
);
