import type { Option } from 'commander';
import type { Outline } from '../outline.js';
import { choicesOf, firstChoices, placesOf, takesValue } from './words.js';

/** In single quotes, as fish has them. */
const quoted = (text: string): string => `'${text.replaceAll('\\', '\\\\').replaceAll("'", "\\'")}'`;

const at = (place: string): string => `complete -c gatelight -n ${quoted(`__gatelight_at ${quoted(place)}`)}`;

function optionLine(place: string, option: Option): string {
  const { short, long, description } = option;
  const names = [...(short ? [`-s ${short.slice(1)}`] : []), ...(long ? [`-l ${long.slice(2)}`] : [])];
  const choices = choicesOf(option);
  const value = choices.length > 0 ? ` -x -a ${quoted(choices.join(' '))}` : takesValue(option) ? ' -r' : '';
  return `${at(place)} ${names.join(' ')}${value} -d ${quoted(description)}`;
}

function linesOf(outline: Outline): string[] {
  const { place, below, options } = outline;
  return [
    ...below.map(([name, summary]) => `${at(place)} -f -a ${quoted(name)} -d ${quoted(summary)}`),
    ...firstChoices(outline).map((choice) => `${at(place)} -f -a ${quoted(choice)}`),
    ...options.map((option) => optionLine(place, option)),
  ];
}

/** For fish. */
export function fish(outlines: readonly Outline[]): string {
  return `# Completion of gatelight in fish: gatelight completion fish | source
function __gatelight_at
    set -l place
    for word in (commandline -opc)[2..-1]
        if contains -- (string trim "$place $word") ${placesOf(outlines).map(quoted).join(' ')}
            set place (string trim "$place $word")
        end
    end
    test "$place" = "$argv[1]"
end
complete -c gatelight -n ${quoted(`__gatelight_at ''`)} -f
${outlines.flatMap(linesOf).join('\n')}
`;
}
