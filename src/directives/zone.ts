import type { Zone } from '../model/zone.ts';
import { type AttributeType, bad, meant, required } from './attributes/attribute.ts';
import { id, pictureBox } from './attributes/attribute-types.ts';
import { OFF } from './attributes/zones.ts';
import { directive } from './directive.ts';

const zoneId: AttributeType<string> = {
  ...id,
  read: (text, at) =>
    text === OFF
      ? bad(`"${OFF}" is what a step says that is done off the vehicle; give the zone another id`)
      : id.read(text, at),
};

/** Names a part of the platform's drawing. */
export const zone = directive({
  name: 'zone',
  form: 'leaf',
  label: 'required',
  attributes: {
    id: meant(required(zoneId), 'The name by which `zone` on parts and steps speaks of it.'),
    at: meant(
      required(pictureBox),
      'Where it lies in the first picture of the platform, by its edges as parts of the upright picture.',
    ),
  },
  summary:
    'Names a zone of the platform’s drawing, which is the first picture of its page. Parts say by `zone` in which they lie; fasteners and plugs lie where what they hold or sit on lies, and a step where what it handles lies. Every step then shows the drawing with its zone lit, and the guide lists by zone what is done there.',
  example: '::zone[Front end]{#front at="0%,45%,24%,90%"}',
  build: ({ values, directive: found }): Zone | null => {
    if (!values.id || found.label === null) return null;
    return {
      id: values.id.value,
      label: found.labelText.trim(),
      box: values.at?.value ?? null,
      idAt: values.id.at,
      at: found.at,
    };
  },
});
