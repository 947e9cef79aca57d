import type { Option } from 'commander';
import type { Outline } from '../outline.js';
import { quoted } from '../shell-word.js';
import { choicesOf, firstChoices, placesOf, spellings, takesValue } from './words.js';

/** What follows an option: its choices, else whatever the shell itself proposes, as it does where nothing is said. */
function valueCase(place: string, option: Option): string {
  const patterns = spellings(option).map((flag) => quoted(`${place} ${flag}`));
  const choices = choicesOf(option).join(' ');
  const reply = choices === '' ? '' : ` COMPREPLY=($(compgen -W ${quoted(choices)} -- "$cur"));`;
  return `    ${patterns.join(' | ')})${reply} return ;;`;
}

function wordsCase({ place, below, options, ...outline }: Outline): string {
  const names = [...below.map(([name]) => name), ...firstChoices({ place, below, options, ...outline })];
  const flags = options.flatMap(spellings);
  return `    ${quoted(place)}) names=${quoted(names.join(' '))} flags=${quoted(flags.join(' '))} ;;`;
}

/** For bash, 3.2 as well: what is not a command or an option is left to the shell, which proposes files. */
export function bash(outlines: readonly Outline[]): string {
  const values = outlines.flatMap(({ place, options }) =>
    options.filter(takesValue).map((option) => valueCase(place, option)),
  );
  return `# Completion of gatelight in bash: source <(gatelight completion bash)
_gatelight() {
  local cur=\${COMP_WORDS[COMP_CWORD]} prev=\${COMP_WORDS[COMP_CWORD-1]} place='' names='' flags='' i
  COMPREPLY=()
  for ((i = 1; i < COMP_CWORD; i++)); do
    case "\${place:+$place }\${COMP_WORDS[i]}" in
    ${placesOf(outlines).map(quoted).join(' | ')}) place="\${place:+$place }\${COMP_WORDS[i]}" ;;
    esac
  done
  case "$place $prev" in
${values.join('\n')}
  esac
  case "$place" in
${outlines.map(wordsCase).join('\n')}
  esac
  case "$cur" in
    -*) COMPREPLY=($(compgen -W "$flags" -- "$cur")) ;;
    *) COMPREPLY=($(compgen -W "$names" -- "$cur")) ;;
  esac
}
complete -o bashdefault -o default -F _gatelight gatelight
`;
}
