import type { Outline } from '../outline.js';
import { quoted } from '../shell-word.js';
import { choicesOf, firstChoices, placesOf, spellings, takesValue } from './words.js';

/** `name:description` as _describe takes it. */
const described = (name: string, description: string): string =>
  quoted(`${name.replaceAll(':', '\\:')}:${description}`);

function wordsCase({ place, below, options, ...outline }: Outline): string {
  const names = [
    ...below.map(([name, summary]) => described(name, summary)),
    ...firstChoices({ place, below, options, ...outline }).map(quoted),
  ];
  const flags = options.flatMap((option) =>
    spellings(option).map((flag) => described(flag, option.description)),
  );
  return `    ${quoted(place)}) names=(${names.join(' ')}) flags=(${flags.join(' ')}) ;;`;
}

/** For zsh. */
export function zsh(outlines: readonly Outline[]): string {
  const values = outlines.flatMap(({ place, options }) =>
    options.filter(takesValue).map((option) => {
      const patterns = spellings(option).map((flag) => quoted(`${place} ${flag}`));
      const choices = choicesOf(option);
      return `    ${patterns.join(' | ')}) ${choices.length > 0 ? `compadd -- ${choices.map(quoted).join(' ')}` : '_files'}; return ;;`;
    }),
  );
  return `#compdef gatelight
# Completion of gatelight in zsh: source <(gatelight completion zsh), or save it as _gatelight in a folder of $fpath.
_gatelight() {
  local place='' word
  local -a names flags
  for word in "\${(@)words[2,CURRENT-1]}"; do
    case "\${place:+$place }$word" in
    ${placesOf(outlines).map(quoted).join(' | ')}) place="\${place:+$place }$word" ;;
    esac
  done
  case "$place \${words[CURRENT-1]}" in
${values.join('\n')}
  esac
  case "$place" in
${outlines.map(wordsCase).join('\n')}
  esac
  if [[ "\${words[CURRENT]}" == -* ]]; then
    _describe -o option flags
  else
    (( \${#names} )) && _describe command names
    [[ -n "$place" ]] && _files
  fi
}
if [[ "\${funcstack[1]}" == _gatelight ]]; then _gatelight "$@"; else compdef _gatelight gatelight; fi
`;
}
