// Made from docs/schema/circuit.schema.json by scripts/schemas.mjs. Change the schema, not this file.
var __getOwnPropNames = Object.getOwnPropertyNames;
var __commonJS = (cb, mod) => function __require() {
  try {
    return mod || (0, cb[__getOwnPropNames(cb)[0]])((mod = { exports: {} }).exports, mod), mod.exports;
  } catch (e) {
    throw mod = 0, e;
  }
};

// node_modules/ajv/dist/runtime/ucs2length.js
var require_ucs2length = __commonJS({
  "node_modules/ajv/dist/runtime/ucs2length.js"(exports) {
    "use strict";
    Object.defineProperty(exports, "__esModule", { value: true });
    function ucs2length(str) {
      const len = str.length;
      let length = 0;
      let pos = 0;
      let value;
      while (pos < len) {
        length++;
        value = str.charCodeAt(pos++);
        if (value >= 55296 && value <= 56319 && pos < len) {
          value = str.charCodeAt(pos);
          if ((value & 64512) === 56320)
            pos++;
        }
      }
      return length;
    }
    exports.default = ucs2length;
    ucs2length.code = 'require("ajv/dist/runtime/ucs2length").default';
  }
});

// <stdin>
var validate = validate10;
var stdin_default = validate10;
var schema11 = { "$schema": "http://json-schema.org/draft-07/schema#", "$id": "circuit.schema.json", "title": "Circuit", "description": "A sensor circuit as it is built into a vehicle: parts, wires, what can fail and how likely.", "type": "object", "additionalProperties": false, "required": ["circuit", "title", "parts", "wires"], "properties": { "circuit": { "title": "Name", "description": "Short name in small letters and hyphens; procedures call the circuit by it.", "$ref": "#/definitions/name", "examples": ["hall-module-fed"] }, "title": { "title": "Title", "description": "One line for people.", "type": "string", "maxLength": 120, "examples": ["Three-wire Hall switch fed by the module"] }, "notes": { "title": "Notes", "description": "What a technician should know about this kind of circuit; where typical values come from.", "type": "string", "maxLength": 2e3, "examples": ["Typical values; the maker's data come first."] }, "temperature": { "title": "Temperature of the harness", "description": "Copper gains 0.393 % of resistance per degree above 20 degC.", "$ref": "#/definitions/quantity", "default": "25 degC", "examples": ["25 degC"] }, "supply": { "title": "Battery", "description": "Voltage at rest (key-off and key-on), while cranking and with the engine running, and the resistance inside.", "type": "object", "additionalProperties": false, "properties": { "battery": { "title": "At rest", "description": "Open-circuit voltage, key off or on.", "$ref": "#/definitions/quantity", "default": "11.8 V to 14.6 V", "examples": ["12.6 V +/- 0.3 V"] }, "cranking": { "title": "Cranking", "description": "Voltage while the starter turns.", "$ref": "#/definitions/quantity", "default": "9 V to 11.3 V", "examples": ["10.5 V +/- 0.7 V"] }, "running": { "title": "Running", "description": "Voltage with the alternator charging.", "$ref": "#/definitions/quantity", "default": "12.5 V to 15 V", "examples": ["14.2 V +/- 0.3 V"] }, "ohms": { "title": "Inside resistance", "description": "Battery and main cables together.", "$ref": "#/definitions/quantity", "default": "20 mohm", "examples": ["20 mohm"] } } }, "parts": { "title": "Parts", "description": "Everything with a connector: the module, the sensor, fuses, relays, ground points, neighbours, 60 at most. Exactly one part is the sensor.", "type": "object", "minProperties": 1, "maxProperties": 60, "propertyNames": { "$ref": "#/definitions/name" }, "additionalProperties": { "$ref": "#/definitions/part" } }, "wires": { "title": "Wires", "description": "Each wire by its name, from one terminal to another, 150 at most. Names like splice.feed make a joint of several wires.", "type": "object", "minProperties": 1, "maxProperties": 150, "propertyNames": { "$ref": "#/definitions/name" }, "additionalProperties": { "$ref": "#/definitions/wire" } }, "target": { "title": "Target", "description": "What moves past the sensor: a toothed wheel; leave out for a sensor moved by hand or foot.", "type": "object", "additionalProperties": false, "required": ["at"], "properties": { "at": { "title": "Where it sits", "description": "Plain words.", "type": "string", "maxLength": 120, "examples": ["crankshaft"] }, "teeth": { "title": "Pitches", "description": "Tooth pitches of a whole turn, the missing ones counted.", "type": "integer", "minimum": 1, "maximum": 1e3, "examples": [60] }, "missing": { "title": "Missing teeth", "description": "Teeth left out as a mark.", "type": "integer", "minimum": 0, "maximum": 100, "default": 0, "examples": [2] }, "turns": { "title": "Turns per crankshaft turn", "description": "0.5 for a camshaft; 0 when it does not turn with the engine.", "type": "number", "minimum": 0, "maximum": 10, "default": 1, "examples": [0.5] }, "ring": { "title": "Ring on a wheel bearing", "description": "What it is made of. A ring of magnets can be weak or face the wrong way, and any ring can have run-out; leave out for a wheel of the engine.", "enum": ["teeth", "magnets", "either"], "examples": ["either"] }, "on": { "title": "Part of a turn the output is on", "description": "Also the chance that a still target leaves a switched output on. A range where the wheel is not known.", "type": ["number", "string"], "minimum": 0, "maximum": 1, "default": 0.5, "examples": [0.5, "20 % to 80 %"] } } }, "weights": { "title": "How likely each class of fault is", "description": "Relative weight of a whole class, shared out among its faults. 0 rules the class out.", "type": "object", "additionalProperties": false, "properties": { "connector": { "title": "Contacts", "description": "Pins and crimps.", "$ref": "#/definitions/weight", "default": 5 }, "wire": { "title": "Wires", "description": "Opens, resistance and shorts along wires.", "$ref": "#/definitions/weight", "default": 3 }, "sensor": { "title": "Sensor", "description": "The sensor itself.", "$ref": "#/definitions/weight", "default": 3 }, "module": { "title": "Module", "description": "The control module itself.", "$ref": "#/definitions/weight", "default": 0.3 }, "supply": { "title": "Fuses and relays", "description": "Blown fuse, bad relay contact.", "$ref": "#/definitions/weight", "default": 1 }, "neighbour": { "title": "Neighbours", "description": "Another part on the same feed that drags it down.", "$ref": "#/definitions/weight", "default": 0.7 }, "target": { "title": "Target", "description": "Wheel, gap and timing.", "$ref": "#/definitions/weight", "default": 0.7 } } }, "faults": { "title": "Changes to the faults that follow from the structure", "description": "By fault id: another weight, other words, another size, another repair, or ruled out with the reason.", "type": "object", "additionalProperties": { "$ref": "#/definitions/faultChange" } } }, "definitions": { "name": { "type": "string", "pattern": "^[a-z0-9][a-z0-9-]*$" }, "terminal": { "type": "string", "pattern": "^[a-z0-9][a-z0-9-]*\\.[a-z0-9][a-z0-9-]*$" }, "quantity": { "type": "string" }, "weight": { "type": "number", "minimum": 0, "maximum": 1e3 }, "part": { "type": "object", "discriminator": { "propertyName": "kind" }, "x-choices": ["module", "hall-switch", "reluctor", "potentiometer", "current-switch", "fuse", "relay", "ground-point", "neighbour"], "required": ["kind"], "oneOf": [{ "$ref": "#/definitions/module" }, { "$ref": "#/definitions/hallSwitch" }, { "$ref": "#/definitions/reluctor" }, { "$ref": "#/definitions/potentiometer" }, { "$ref": "#/definitions/currentSwitch" }, { "$ref": "#/definitions/fuse" }, { "$ref": "#/definitions/relay" }, { "$ref": "#/definitions/groundPoint" }, { "$ref": "#/definitions/neighbour" }] }, "module": { "title": "ModuleDraft", "description": "A control module, pin by pin: what is behind each pin.", "type": "object", "additionalProperties": false, "required": ["kind", "pins"], "properties": { "kind": { "const": "module" }, "words": { "title": "Plain name", "description": "What people call it.", "type": "string", "maxLength": 120, "examples": ["engine control module"] }, "offset": { "title": "Ground above battery negative", "description": "What other consumers drop on its ground cable, key on: where its resistors to ground lead. Else that of its first pin with a ground that has one.", "$ref": "#/definitions/quantity", "examples": ["0.2 mV to 40 mV"] }, "pins": { "title": "Pins", "description": "Each pin by its name, 150 at most.", "type": "object", "minProperties": 1, "maxProperties": 150, "propertyNames": { "$ref": "#/definitions/name" }, "additionalProperties": { "$ref": "#/definitions/modulePin" } } } }, "modulePin": { "title": "ModulePinDraft", "type": "object", "additionalProperties": false, "properties": { "reference": { "title": "Regulated output", "description": "A supply that the module gives out. It limits its current and takes none back.", "type": "object", "additionalProperties": false, "required": ["volts"], "properties": { "volts": { "title": "Voltage", "description": "A voltage, or the word battery for an output that follows battery voltage; or one of these.", "$ref": "#/definitions/quantity", "examples": ["5 V +/- 2 %", "battery", "one of: 8 V +/- 3 % 70 %, battery 30 %"] }, "series": { "title": "Inside resistance", "description": "Resistance of the output.", "$ref": "#/definitions/quantity", "default": "0.5 ohm", "examples": ["0.5 ohm"] }, "limit": { "title": "Current limit", "description": "The output gives no more than this.", "$ref": "#/definitions/quantity", "default": "40 mA to 150 mA", "examples": ["80 mA"] } } }, "pull": { "title": "Resistor", "description": "Pull-up, pull-down, bias or sense resistor inside the module.", "type": "object", "additionalProperties": false, "required": ["to", "ohms"], "properties": { "to": { "title": "Other end", "description": "Another pin of this module, battery, ground, nothing (an input without a resistor), a voltage, or the voltage behind the resistor of another pin; or one of these.", "type": "string", "examples": ["same as signal-plus", "reference", "battery", "ground", "2.5 V", "one of: reference 70 %, 8 V 10 %, battery 20 %"] }, "ohms": { "title": "Resistance", "description": "With its tolerance, or the range it may be in; or the resistance behind another pin, where the two are of one kind.", "$ref": "#/definitions/quantity", "examples": ["2.2 kohm +/- 5 %", "1 kohm to 22 kohm", "same as signal-plus"] }, "alike": { "title": "Built alike", "description": "Another pin of this module with as many ends to choose from; this pin has the end at the same place of its own list.", "$ref": "#/definitions/name", "examples": ["signal-1"] } } }, "input": { "title": "Input", "description": "The module reads this pin. Either two thresholds, or the swing against another pin that it needs.", "type": "object", "additionalProperties": false, "properties": { "low-below": { "title": "Low below", "description": "Counts as low below this voltage, this current through the pin's own resistor to ground, or this part of what its pull-up leads to; a position sensor must come below it at one end of its travel.", "$ref": "#/definitions/quantity", "examples": ["1.5 V", "9 mA", "30 %"] }, "high-above": { "title": "High above", "description": "Counts as high above this, in the unit of low-below.", "$ref": "#/definitions/quantity", "examples": ["3.5 V", "11.5 mA", "70 %"] }, "swing": { "title": "Swing needed", "description": "Smallest peak-to-peak voltage that the module counts.", "$ref": "#/definitions/quantity", "examples": ["0.4 V"] }, "of": { "title": "Of", "description": "travel: the two levels are percentages of the travel from the lower to the upper end of the track at this pin.", "enum": ["travel"] }, "against": { "title": "Against", "description": "The other pin of a two-pin input.", "$ref": "#/definitions/name", "examples": ["signal-minus"] } } }, "joined-to": { "title": "Joined to", "description": "Another pin of this module that is the same copper inside: a reference or ground with several pins.", "$ref": "#/definitions/name", "examples": ["reference"] }, "driver": { "title": "Driver", "description": "The module switches this pin to ground while it has power, as for the coil of a relay.", "type": "object", "additionalProperties": false, "properties": { "ohms": { "title": "Resistance", "description": "When it is on.", "$ref": "#/definitions/quantity", "default": "0.2 ohm to 2 ohm", "examples": ["0.2 ohm to 2 ohm"] } } }, "ground": { "title": "Ground", "description": "The pin is a ground of the module.", "type": "object", "additionalProperties": false, "properties": { "ohms": { "title": "Resistance to battery negative", "description": "Through the module and its ground cable.", "$ref": "#/definitions/quantity", "default": "20 mohm", "examples": ["20 mohm"] }, "offset": { "title": "Above battery negative", "description": "What other consumers drop on its ground cable, key on.", "$ref": "#/definitions/quantity", "examples": ["0.2 mV to 40 mV"] } } } } }, "hallSwitch": { "title": "HallSwitchDraft", "description": "Hall switch with open-collector output. Pins: feed, signal, ground.", "type": "object", "additionalProperties": false, "required": ["kind"], "properties": { "kind": { "const": "hall-switch" }, "words": { "title": "Plain name", "description": "What people call it.", "type": "string", "maxLength": 120, "examples": ["crankshaft position sensor"] }, "draws": { "title": "Supply current", "description": "Above the least voltage.", "$ref": "#/definitions/quantity", "default": "3 mA to 20 mA", "examples": ["8 mA +/- 40 %"] }, "minimum": { "title": "Least supply voltage", "description": "Below nine tenths of this the output stays off.", "$ref": "#/definitions/quantity", "default": "3 V to 4.5 V", "examples": ["3.8 V"] }, "on": { "title": "Output resistance when on", "description": "Signal to ground.", "$ref": "#/definitions/quantity", "default": "20 ohm to 200 ohm", "examples": ["50 ohm +/- 50 %"] }, "off": { "title": "Output leakage when off", "description": "As a resistance, signal to ground.", "$ref": "#/definitions/quantity", "default": "1 Mohm to 20 Mohm", "examples": ["2 Mohm"] }, "limit": { "title": "Output current limit", "description": "The output protects itself at this current.", "$ref": "#/definitions/quantity", "default": "25 mA to 60 mA", "examples": ["40 mA"] } } }, "reluctor": { "title": "ReluctorDraft", "description": "Variable reluctance coil. Pins: plus, minus.", "type": "object", "additionalProperties": false, "required": ["kind"], "properties": { "kind": { "const": "reluctor" }, "words": { "title": "Plain name", "description": "What people call it.", "type": "string", "maxLength": 120, "examples": ["crankshaft position sensor"] }, "ohms": { "title": "Coil resistance", "description": "Between its pins, at the harness temperature.", "$ref": "#/definitions/quantity", "default": "190 ohm to 2.5 kohm", "examples": ["900 ohm +/- 15 %"] }, "cranking": { "title": "Peak voltage while cranking", "description": "Of the unloaded coil.", "$ref": "#/definitions/quantity", "default": "1 V +/- 40 %", "examples": ["1 V +/- 40 %"] }, "running": { "title": "Peak voltage at idle", "description": "Of the unloaded coil.", "$ref": "#/definitions/quantity", "default": "4 V +/- 40 %", "examples": ["4 V +/- 40 %"] }, "by-hand": { "title": "Peak voltage when moved by hand", "description": "Of the unloaded coil, moved as fast as a hand can.", "$ref": "#/definitions/quantity", "default": "0.8 V +/- 30 %", "examples": ["0.8 V +/- 30 %"] } } }, "potentiometer": { "title": "PotentiometerDraft", "description": "One or more tracks moved together. Pins as the tracks name them.", "type": "object", "additionalProperties": false, "required": ["kind", "tracks"], "properties": { "kind": { "const": "potentiometer" }, "words": { "title": "Plain name", "description": "What people call it.", "type": "string", "maxLength": 120, "examples": ["throttle position sensor"] }, "turned": { "title": "Turned", "description": "Share of cars in which the sensor is built the other way round: what is closed here is as far from the top as it is written from the bottom.", "$ref": "#/definitions/quantity", "examples": ["30 %"] }, "tracks": { "title": "Tracks", "description": "Each track by its name.", "type": "object", "minProperties": 1, "propertyNames": { "$ref": "#/definitions/name" }, "additionalProperties": { "title": "TrackDraft", "type": "object", "additionalProperties": false, "required": ["feed", "signal", "ground", "ohms"], "properties": { "feed": { "title": "Feed pin", "description": "Name of the pin at the top of the track.", "$ref": "#/definitions/name", "examples": ["feed"] }, "signal": { "title": "Wiper pin", "description": "Name of the pin of the wiper.", "$ref": "#/definitions/name", "examples": ["signal"] }, "ground": { "title": "Ground pin", "description": "Name of the pin at the foot of the track.", "$ref": "#/definitions/name", "examples": ["ground"] }, "ohms": { "title": "Track resistance", "description": "Feed to ground.", "$ref": "#/definitions/quantity", "examples": ["4 kohm +/- 20 %"] }, "wiper": { "title": "Wiper resistance", "description": "Between the track and the pin.", "$ref": "#/definitions/quantity", "default": "200 ohm +/- 50 %", "examples": ["200 ohm"] }, "closed": { "title": "Position at rest", "description": "Part of the track between ground and wiper, at rest.", "$ref": "#/definitions/quantity", "examples": ["12 % +/- 2 %"] }, "open": { "title": "Position fully moved", "description": "Part of the track between ground and wiper, fully moved.", "$ref": "#/definitions/quantity", "examples": ["90 % +/- 2 %"] }, "beside": { "title": "Beside", "description": "Another track, which tells where this one ends; then closed and open are left out.", "$ref": "#/definitions/name", "examples": ["track-1"] }, "runs": { "title": "How it runs relative to it", "description": "half of its position, opposite to it, or lower by a constant; one, or one of several.", "$ref": "#/definitions/quantity", "default": "half", "examples": ["one of: half 50 %, opposite 30 %, lower 20 %"] }, "lower": { "title": "How far lower", "description": "Part of the track, where it runs lower.", "$ref": "#/definitions/quantity", "default": "6 % to 10 %", "examples": ["6 % to 10 %"] } } } } } }, "currentSwitch": { "title": "CurrentSwitchDraft", "description": "Two-wire active sensor that switches between two currents. Pins: feed, signal.", "type": "object", "additionalProperties": false, "required": ["kind"], "properties": { "kind": { "const": "current-switch" }, "words": { "title": "Plain name", "description": "What people call it.", "type": "string", "maxLength": 120, "examples": ["left front wheel speed sensor"] }, "low": { "title": "Small current", "description": "Of the two.", "$ref": "#/definitions/quantity", "default": "7 mA +/- 20 %", "examples": ["7 mA +/- 15 %"] }, "high": { "title": "Large current", "description": "Of the two.", "$ref": "#/definitions/quantity", "default": "14 mA +/- 20 %", "examples": ["14 mA +/- 15 %"] }, "minimum": { "title": "Least voltage across it", "description": "Below this the currents fall in proportion.", "$ref": "#/definitions/quantity", "default": "3 V to 4.5 V", "examples": ["4.5 V"] }, "reverse": { "title": "Resistance backwards", "description": "With the two wires swapped.", "$ref": "#/definitions/quantity", "default": "1 Mohm", "examples": ["1 Mohm"] } } }, "fuse": { "title": "FuseDraft", "description": "A fuse. Pins: in, out.", "type": "object", "additionalProperties": false, "required": ["kind"], "properties": { "kind": { "const": "fuse" }, "words": { "title": "Plain name", "description": "What people call it.", "type": "string", "maxLength": 120, "examples": ["fuse F12"] }, "amps": { "title": "Rating", "description": "It blows above 1.35 times this.", "$ref": "#/definitions/quantity", "default": "10 A", "examples": ["10 A"] }, "ohms": { "title": "Resistance", "description": "When whole.", "$ref": "#/definitions/quantity", "default": "8 mohm", "examples": ["8 mohm"] } } }, "relay": { "title": "RelayDraft", "description": "A relay contact. Pins, with the terminal numbers of DIN 72552: 30 (in), 87 (out); with a coil also 86 (its feed) and 85 (its switched side). Without a coil the contact is closed whenever the key is on.", "type": "object", "additionalProperties": false, "required": ["kind"], "properties": { "kind": { "const": "relay" }, "words": { "title": "Plain name", "description": "What people call it.", "type": "string", "maxLength": 120, "examples": ["main relay"] }, "ohms": { "title": "Contact resistance", "description": "When closed.", "$ref": "#/definitions/quantity", "default": "5 mohm to 50 mohm", "examples": ["20 mohm"] }, "coil": { "title": "Coil", "description": "Resistance between 86 and 85.", "$ref": "#/definitions/quantity", "examples": ["60 ohm to 120 ohm"] }, "pulls-in": { "title": "Pulls in", "description": "The contact closes from this voltage at the coil.", "$ref": "#/definitions/quantity", "default": "5 V to 7.5 V", "examples": ["5 V to 7.5 V"] } } }, "groundPoint": { "title": "GroundPointDraft", "description": "A stud on the body. Pin: eyelet.", "type": "object", "additionalProperties": false, "required": ["kind"], "properties": { "kind": { "const": "ground-point" }, "words": { "title": "Plain name", "description": "What people call it.", "type": "string", "maxLength": 120, "examples": ["ground point behind the battery"] }, "ohms": { "title": "Resistance to battery negative", "description": "Through body and ground cable.", "$ref": "#/definitions/quantity", "default": "2 mohm to 20 mohm", "examples": ["5 mohm"] }, "offset": { "title": "Above battery negative", "description": "What other loads drop along it, key on.", "$ref": "#/definitions/quantity", "examples": ["0.2 mV to 40 mV"] } } }, "neighbour": { "title": "NeighbourDraft", "description": "Another part on the same feed or ground, as a load. Pins: feed, ground.", "type": "object", "additionalProperties": false, "required": ["kind", "ohms"], "properties": { "kind": { "const": "neighbour" }, "words": { "title": "Plain name", "description": "What people call it.", "type": "string", "maxLength": 120, "examples": ["throttle position sensor"] }, "ohms": { "title": "Resistance when healthy", "description": "Feed to ground.", "$ref": "#/definitions/quantity", "examples": ["5 kohm +/- 20 %"] }, "shorted": { "title": "Resistance when shorted", "description": "When it drags the feed down.", "$ref": "#/definitions/quantity", "default": "4 ohm +/- 80 %", "examples": ["4 ohm +/- 80 %"] } } }, "wire": { "title": "WireDraft", "type": "object", "additionalProperties": false, "required": ["from", "to", "size", "length"], "properties": { "from": { "title": "From", "description": "A terminal, or a splice.", "$ref": "#/definitions/terminal", "examples": ["module.reference"] }, "to": { "title": "To", "description": "A terminal, or a splice.", "$ref": "#/definitions/terminal", "examples": ["sensor.feed"] }, "size": { "title": "Cross-section", "description": "Copper.", "$ref": "#/definitions/quantity", "examples": ["0.5 mm2"] }, "length": { "title": "Length", "description": "One way; a range where it is not known.", "$ref": "#/definitions/quantity", "examples": ["3 m", "0.5 m to 5 m"] } } }, "faultChange": { "title": "FaultChangeDraft", "type": "object", "additionalProperties": false, "properties": { "weight": { "title": "Weight", "description": "Instead of the rule's share.", "$ref": "#/definitions/weight", "examples": [2] }, "words": { "title": "Plain words", "description": "Instead of the rule's words.", "type": "string", "maxLength": 300, "examples": ["the signal pin is pushed back"] }, "repair": { "title": "Repair", "description": "Faults with the same repair need not be told apart.", "type": "string", "pattern": "^[a-z0-9][a-z0-9.-]*$", "examples": ["sensor.replace"] }, "repair-words": { "title": "Repair in words", "description": "What to do.", "type": "string", "maxLength": 300, "examples": ["Replace the pin."] }, "ohms": { "title": "Size", "description": "Resistance of the fault, its smallest and largest.", "$ref": "#/definitions/quantity", "examples": ["500 ohm +/- 80 %"] }, "ruled-out": { "title": "Ruled out because", "description": "Why this cannot happen here.", "type": "string", "maxLength": 300, "examples": ["the wire runs alone in a steel tube"] } } } } };
var schema12 = { "type": "string", "pattern": "^[a-z0-9][a-z0-9-]*$" };
var schema13 = { "type": "string" };
var schema85 = { "type": "number", "minimum": 0, "maximum": 1e3 };
var func2 = Object.prototype.hasOwnProperty;
var func3 = require_ucs2length().default;
var pattern0 = new RegExp("^[a-z0-9][a-z0-9-]*$", "u");
var schema19 = { "type": "object", "discriminator": { "propertyName": "kind" }, "x-choices": ["module", "hall-switch", "reluctor", "potentiometer", "current-switch", "fuse", "relay", "ground-point", "neighbour"], "required": ["kind"], "oneOf": [{ "$ref": "#/definitions/module" }, { "$ref": "#/definitions/hallSwitch" }, { "$ref": "#/definitions/reluctor" }, { "$ref": "#/definitions/potentiometer" }, { "$ref": "#/definitions/currentSwitch" }, { "$ref": "#/definitions/fuse" }, { "$ref": "#/definitions/relay" }, { "$ref": "#/definitions/groundPoint" }, { "$ref": "#/definitions/neighbour" }] };
var schema20 = { "title": "ModuleDraft", "description": "A control module, pin by pin: what is behind each pin.", "type": "object", "additionalProperties": false, "required": ["kind", "pins"], "properties": { "kind": { "const": "module" }, "words": { "title": "Plain name", "description": "What people call it.", "type": "string", "maxLength": 120, "examples": ["engine control module"] }, "offset": { "title": "Ground above battery negative", "description": "What other consumers drop on its ground cable, key on: where its resistors to ground lead. Else that of its first pin with a ground that has one.", "$ref": "#/definitions/quantity", "examples": ["0.2 mV to 40 mV"] }, "pins": { "title": "Pins", "description": "Each pin by its name, 150 at most.", "type": "object", "minProperties": 1, "maxProperties": 150, "propertyNames": { "$ref": "#/definitions/name" }, "additionalProperties": { "$ref": "#/definitions/modulePin" } } } };
var schema23 = { "title": "ModulePinDraft", "type": "object", "additionalProperties": false, "properties": { "reference": { "title": "Regulated output", "description": "A supply that the module gives out. It limits its current and takes none back.", "type": "object", "additionalProperties": false, "required": ["volts"], "properties": { "volts": { "title": "Voltage", "description": "A voltage, or the word battery for an output that follows battery voltage; or one of these.", "$ref": "#/definitions/quantity", "examples": ["5 V +/- 2 %", "battery", "one of: 8 V +/- 3 % 70 %, battery 30 %"] }, "series": { "title": "Inside resistance", "description": "Resistance of the output.", "$ref": "#/definitions/quantity", "default": "0.5 ohm", "examples": ["0.5 ohm"] }, "limit": { "title": "Current limit", "description": "The output gives no more than this.", "$ref": "#/definitions/quantity", "default": "40 mA to 150 mA", "examples": ["80 mA"] } } }, "pull": { "title": "Resistor", "description": "Pull-up, pull-down, bias or sense resistor inside the module.", "type": "object", "additionalProperties": false, "required": ["to", "ohms"], "properties": { "to": { "title": "Other end", "description": "Another pin of this module, battery, ground, nothing (an input without a resistor), a voltage, or the voltage behind the resistor of another pin; or one of these.", "type": "string", "examples": ["same as signal-plus", "reference", "battery", "ground", "2.5 V", "one of: reference 70 %, 8 V 10 %, battery 20 %"] }, "ohms": { "title": "Resistance", "description": "With its tolerance, or the range it may be in; or the resistance behind another pin, where the two are of one kind.", "$ref": "#/definitions/quantity", "examples": ["2.2 kohm +/- 5 %", "1 kohm to 22 kohm", "same as signal-plus"] }, "alike": { "title": "Built alike", "description": "Another pin of this module with as many ends to choose from; this pin has the end at the same place of its own list.", "$ref": "#/definitions/name", "examples": ["signal-1"] } } }, "input": { "title": "Input", "description": "The module reads this pin. Either two thresholds, or the swing against another pin that it needs.", "type": "object", "additionalProperties": false, "properties": { "low-below": { "title": "Low below", "description": "Counts as low below this voltage, this current through the pin's own resistor to ground, or this part of what its pull-up leads to; a position sensor must come below it at one end of its travel.", "$ref": "#/definitions/quantity", "examples": ["1.5 V", "9 mA", "30 %"] }, "high-above": { "title": "High above", "description": "Counts as high above this, in the unit of low-below.", "$ref": "#/definitions/quantity", "examples": ["3.5 V", "11.5 mA", "70 %"] }, "swing": { "title": "Swing needed", "description": "Smallest peak-to-peak voltage that the module counts.", "$ref": "#/definitions/quantity", "examples": ["0.4 V"] }, "of": { "title": "Of", "description": "travel: the two levels are percentages of the travel from the lower to the upper end of the track at this pin.", "enum": ["travel"] }, "against": { "title": "Against", "description": "The other pin of a two-pin input.", "$ref": "#/definitions/name", "examples": ["signal-minus"] } } }, "joined-to": { "title": "Joined to", "description": "Another pin of this module that is the same copper inside: a reference or ground with several pins.", "$ref": "#/definitions/name", "examples": ["reference"] }, "driver": { "title": "Driver", "description": "The module switches this pin to ground while it has power, as for the coil of a relay.", "type": "object", "additionalProperties": false, "properties": { "ohms": { "title": "Resistance", "description": "When it is on.", "$ref": "#/definitions/quantity", "default": "0.2 ohm to 2 ohm", "examples": ["0.2 ohm to 2 ohm"] } } }, "ground": { "title": "Ground", "description": "The pin is a ground of the module.", "type": "object", "additionalProperties": false, "properties": { "ohms": { "title": "Resistance to battery negative", "description": "Through the module and its ground cable.", "$ref": "#/definitions/quantity", "default": "20 mohm", "examples": ["20 mohm"] }, "offset": { "title": "Above battery negative", "description": "What other consumers drop on its ground cable, key on.", "$ref": "#/definitions/quantity", "examples": ["0.2 mV to 40 mV"] } } } } };
function validate13(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    for (const key0 in data) {
      if (!(key0 === "reference" || key0 === "pull" || key0 === "input" || key0 === "joined-to" || key0 === "driver" || key0 === "ground")) {
        const err0 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema23, data };
        if (vErrors === null) {
          vErrors = [err0];
        } else {
          vErrors.push(err0);
        }
        errors++;
      }
    }
    if (data.reference !== void 0) {
      let data0 = data.reference;
      if (data0 && typeof data0 == "object" && !Array.isArray(data0)) {
        if (data0.volts === void 0) {
          const err1 = { instancePath: instancePath + "/reference", schemaPath: "#/properties/reference/required", keyword: "required", params: { missingProperty: "volts" }, message: "must have required property 'volts'", schema: schema23.properties.reference.required, parentSchema: schema23.properties.reference, data: data0 };
          if (vErrors === null) {
            vErrors = [err1];
          } else {
            vErrors.push(err1);
          }
          errors++;
        }
        for (const key1 in data0) {
          if (!(key1 === "volts" || key1 === "series" || key1 === "limit")) {
            const err2 = { instancePath: instancePath + "/reference", schemaPath: "#/properties/reference/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key1 }, message: "must NOT have additional properties", schema: false, parentSchema: schema23.properties.reference, data: data0 };
            if (vErrors === null) {
              vErrors = [err2];
            } else {
              vErrors.push(err2);
            }
            errors++;
          }
        }
        if (data0.volts !== void 0) {
          let data1 = data0.volts;
          if (typeof data1 !== "string") {
            const err3 = { instancePath: instancePath + "/reference/volts", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data1 };
            if (vErrors === null) {
              vErrors = [err3];
            } else {
              vErrors.push(err3);
            }
            errors++;
          }
        }
        if (data0.series !== void 0) {
          let data2 = data0.series;
          if (typeof data2 !== "string") {
            const err4 = { instancePath: instancePath + "/reference/series", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data2 };
            if (vErrors === null) {
              vErrors = [err4];
            } else {
              vErrors.push(err4);
            }
            errors++;
          }
        }
        if (data0.limit !== void 0) {
          let data3 = data0.limit;
          if (typeof data3 !== "string") {
            const err5 = { instancePath: instancePath + "/reference/limit", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data3 };
            if (vErrors === null) {
              vErrors = [err5];
            } else {
              vErrors.push(err5);
            }
            errors++;
          }
        }
      } else {
        const err6 = { instancePath: instancePath + "/reference", schemaPath: "#/properties/reference/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema23.properties.reference.type, parentSchema: schema23.properties.reference, data: data0 };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data.pull !== void 0) {
      let data4 = data.pull;
      if (data4 && typeof data4 == "object" && !Array.isArray(data4)) {
        if (data4.to === void 0) {
          const err7 = { instancePath: instancePath + "/pull", schemaPath: "#/properties/pull/required", keyword: "required", params: { missingProperty: "to" }, message: "must have required property 'to'", schema: schema23.properties.pull.required, parentSchema: schema23.properties.pull, data: data4 };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
        if (data4.ohms === void 0) {
          const err8 = { instancePath: instancePath + "/pull", schemaPath: "#/properties/pull/required", keyword: "required", params: { missingProperty: "ohms" }, message: "must have required property 'ohms'", schema: schema23.properties.pull.required, parentSchema: schema23.properties.pull, data: data4 };
          if (vErrors === null) {
            vErrors = [err8];
          } else {
            vErrors.push(err8);
          }
          errors++;
        }
        for (const key2 in data4) {
          if (!(key2 === "to" || key2 === "ohms" || key2 === "alike")) {
            const err9 = { instancePath: instancePath + "/pull", schemaPath: "#/properties/pull/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key2 }, message: "must NOT have additional properties", schema: false, parentSchema: schema23.properties.pull, data: data4 };
            if (vErrors === null) {
              vErrors = [err9];
            } else {
              vErrors.push(err9);
            }
            errors++;
          }
        }
        if (data4.to !== void 0) {
          let data5 = data4.to;
          if (typeof data5 !== "string") {
            const err10 = { instancePath: instancePath + "/pull/to", schemaPath: "#/properties/pull/properties/to/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema23.properties.pull.properties.to.type, parentSchema: schema23.properties.pull.properties.to, data: data5 };
            if (vErrors === null) {
              vErrors = [err10];
            } else {
              vErrors.push(err10);
            }
            errors++;
          }
        }
        if (data4.ohms !== void 0) {
          let data6 = data4.ohms;
          if (typeof data6 !== "string") {
            const err11 = { instancePath: instancePath + "/pull/ohms", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data6 };
            if (vErrors === null) {
              vErrors = [err11];
            } else {
              vErrors.push(err11);
            }
            errors++;
          }
        }
        if (data4.alike !== void 0) {
          let data7 = data4.alike;
          if (typeof data7 === "string") {
            if (!pattern0.test(data7)) {
              const err12 = { instancePath: instancePath + "/pull/alike", schemaPath: "#/definitions/name/pattern", keyword: "pattern", params: { pattern: "^[a-z0-9][a-z0-9-]*$" }, message: 'must match pattern "^[a-z0-9][a-z0-9-]*$"', schema: "^[a-z0-9][a-z0-9-]*$", parentSchema: schema12, data: data7 };
              if (vErrors === null) {
                vErrors = [err12];
              } else {
                vErrors.push(err12);
              }
              errors++;
            }
          } else {
            const err13 = { instancePath: instancePath + "/pull/alike", schemaPath: "#/definitions/name/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema12.type, parentSchema: schema12, data: data7 };
            if (vErrors === null) {
              vErrors = [err13];
            } else {
              vErrors.push(err13);
            }
            errors++;
          }
        }
      } else {
        const err14 = { instancePath: instancePath + "/pull", schemaPath: "#/properties/pull/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema23.properties.pull.type, parentSchema: schema23.properties.pull, data: data4 };
        if (vErrors === null) {
          vErrors = [err14];
        } else {
          vErrors.push(err14);
        }
        errors++;
      }
    }
    if (data.input !== void 0) {
      let data8 = data.input;
      if (data8 && typeof data8 == "object" && !Array.isArray(data8)) {
        for (const key3 in data8) {
          if (!(key3 === "low-below" || key3 === "high-above" || key3 === "swing" || key3 === "of" || key3 === "against")) {
            const err15 = { instancePath: instancePath + "/input", schemaPath: "#/properties/input/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key3 }, message: "must NOT have additional properties", schema: false, parentSchema: schema23.properties.input, data: data8 };
            if (vErrors === null) {
              vErrors = [err15];
            } else {
              vErrors.push(err15);
            }
            errors++;
          }
        }
        if (data8["low-below"] !== void 0) {
          let data9 = data8["low-below"];
          if (typeof data9 !== "string") {
            const err16 = { instancePath: instancePath + "/input/low-below", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data9 };
            if (vErrors === null) {
              vErrors = [err16];
            } else {
              vErrors.push(err16);
            }
            errors++;
          }
        }
        if (data8["high-above"] !== void 0) {
          let data10 = data8["high-above"];
          if (typeof data10 !== "string") {
            const err17 = { instancePath: instancePath + "/input/high-above", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data10 };
            if (vErrors === null) {
              vErrors = [err17];
            } else {
              vErrors.push(err17);
            }
            errors++;
          }
        }
        if (data8.swing !== void 0) {
          let data11 = data8.swing;
          if (typeof data11 !== "string") {
            const err18 = { instancePath: instancePath + "/input/swing", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data11 };
            if (vErrors === null) {
              vErrors = [err18];
            } else {
              vErrors.push(err18);
            }
            errors++;
          }
        }
        if (data8.of !== void 0) {
          let data12 = data8.of;
          if (!(data12 === "travel")) {
            const err19 = { instancePath: instancePath + "/input/of", schemaPath: "#/properties/input/properties/of/enum", keyword: "enum", params: { allowedValues: schema23.properties.input.properties.of.enum }, message: "must be equal to one of the allowed values", schema: schema23.properties.input.properties.of.enum, parentSchema: schema23.properties.input.properties.of, data: data12 };
            if (vErrors === null) {
              vErrors = [err19];
            } else {
              vErrors.push(err19);
            }
            errors++;
          }
        }
        if (data8.against !== void 0) {
          let data13 = data8.against;
          if (typeof data13 === "string") {
            if (!pattern0.test(data13)) {
              const err20 = { instancePath: instancePath + "/input/against", schemaPath: "#/definitions/name/pattern", keyword: "pattern", params: { pattern: "^[a-z0-9][a-z0-9-]*$" }, message: 'must match pattern "^[a-z0-9][a-z0-9-]*$"', schema: "^[a-z0-9][a-z0-9-]*$", parentSchema: schema12, data: data13 };
              if (vErrors === null) {
                vErrors = [err20];
              } else {
                vErrors.push(err20);
              }
              errors++;
            }
          } else {
            const err21 = { instancePath: instancePath + "/input/against", schemaPath: "#/definitions/name/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema12.type, parentSchema: schema12, data: data13 };
            if (vErrors === null) {
              vErrors = [err21];
            } else {
              vErrors.push(err21);
            }
            errors++;
          }
        }
      } else {
        const err22 = { instancePath: instancePath + "/input", schemaPath: "#/properties/input/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema23.properties.input.type, parentSchema: schema23.properties.input, data: data8 };
        if (vErrors === null) {
          vErrors = [err22];
        } else {
          vErrors.push(err22);
        }
        errors++;
      }
    }
    if (data["joined-to"] !== void 0) {
      let data14 = data["joined-to"];
      if (typeof data14 === "string") {
        if (!pattern0.test(data14)) {
          const err23 = { instancePath: instancePath + "/joined-to", schemaPath: "#/definitions/name/pattern", keyword: "pattern", params: { pattern: "^[a-z0-9][a-z0-9-]*$" }, message: 'must match pattern "^[a-z0-9][a-z0-9-]*$"', schema: "^[a-z0-9][a-z0-9-]*$", parentSchema: schema12, data: data14 };
          if (vErrors === null) {
            vErrors = [err23];
          } else {
            vErrors.push(err23);
          }
          errors++;
        }
      } else {
        const err24 = { instancePath: instancePath + "/joined-to", schemaPath: "#/definitions/name/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema12.type, parentSchema: schema12, data: data14 };
        if (vErrors === null) {
          vErrors = [err24];
        } else {
          vErrors.push(err24);
        }
        errors++;
      }
    }
    if (data.driver !== void 0) {
      let data15 = data.driver;
      if (data15 && typeof data15 == "object" && !Array.isArray(data15)) {
        for (const key4 in data15) {
          if (!(key4 === "ohms")) {
            const err25 = { instancePath: instancePath + "/driver", schemaPath: "#/properties/driver/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key4 }, message: "must NOT have additional properties", schema: false, parentSchema: schema23.properties.driver, data: data15 };
            if (vErrors === null) {
              vErrors = [err25];
            } else {
              vErrors.push(err25);
            }
            errors++;
          }
        }
        if (data15.ohms !== void 0) {
          let data16 = data15.ohms;
          if (typeof data16 !== "string") {
            const err26 = { instancePath: instancePath + "/driver/ohms", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data16 };
            if (vErrors === null) {
              vErrors = [err26];
            } else {
              vErrors.push(err26);
            }
            errors++;
          }
        }
      } else {
        const err27 = { instancePath: instancePath + "/driver", schemaPath: "#/properties/driver/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema23.properties.driver.type, parentSchema: schema23.properties.driver, data: data15 };
        if (vErrors === null) {
          vErrors = [err27];
        } else {
          vErrors.push(err27);
        }
        errors++;
      }
    }
    if (data.ground !== void 0) {
      let data17 = data.ground;
      if (data17 && typeof data17 == "object" && !Array.isArray(data17)) {
        for (const key5 in data17) {
          if (!(key5 === "ohms" || key5 === "offset")) {
            const err28 = { instancePath: instancePath + "/ground", schemaPath: "#/properties/ground/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key5 }, message: "must NOT have additional properties", schema: false, parentSchema: schema23.properties.ground, data: data17 };
            if (vErrors === null) {
              vErrors = [err28];
            } else {
              vErrors.push(err28);
            }
            errors++;
          }
        }
        if (data17.ohms !== void 0) {
          let data18 = data17.ohms;
          if (typeof data18 !== "string") {
            const err29 = { instancePath: instancePath + "/ground/ohms", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data18 };
            if (vErrors === null) {
              vErrors = [err29];
            } else {
              vErrors.push(err29);
            }
            errors++;
          }
        }
        if (data17.offset !== void 0) {
          let data19 = data17.offset;
          if (typeof data19 !== "string") {
            const err30 = { instancePath: instancePath + "/ground/offset", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data19 };
            if (vErrors === null) {
              vErrors = [err30];
            } else {
              vErrors.push(err30);
            }
            errors++;
          }
        }
      } else {
        const err31 = { instancePath: instancePath + "/ground", schemaPath: "#/properties/ground/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema23.properties.ground.type, parentSchema: schema23.properties.ground, data: data17 };
        if (vErrors === null) {
          vErrors = [err31];
        } else {
          vErrors.push(err31);
        }
        errors++;
      }
    }
  } else {
    const err32 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema23.type, parentSchema: schema23, data };
    if (vErrors === null) {
      vErrors = [err32];
    } else {
      vErrors.push(err32);
    }
    errors++;
  }
  validate13.errors = vErrors;
  return errors === 0;
}
function validate12(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.kind === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "kind" }, message: "must have required property 'kind'", schema: schema20.required, parentSchema: schema20, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.pins === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "pins" }, message: "must have required property 'pins'", schema: schema20.required, parentSchema: schema20, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "kind" || key0 === "words" || key0 === "offset" || key0 === "pins")) {
        const err2 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema20, data };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.kind !== void 0) {
      let data0 = data.kind;
      if ("module" !== data0) {
        const err3 = { instancePath: instancePath + "/kind", schemaPath: "#/properties/kind/const", keyword: "const", params: { allowedValue: "module" }, message: "must be equal to constant", schema: "module", parentSchema: schema20.properties.kind, data: data0 };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data.words !== void 0) {
      let data1 = data.words;
      if (typeof data1 === "string") {
        if (func3(data1) > 120) {
          const err4 = { instancePath: instancePath + "/words", schemaPath: "#/properties/words/maxLength", keyword: "maxLength", params: { limit: 120 }, message: "must NOT have more than 120 characters", schema: 120, parentSchema: schema20.properties.words, data: data1 };
          if (vErrors === null) {
            vErrors = [err4];
          } else {
            vErrors.push(err4);
          }
          errors++;
        }
      } else {
        const err5 = { instancePath: instancePath + "/words", schemaPath: "#/properties/words/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema20.properties.words.type, parentSchema: schema20.properties.words, data: data1 };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
    if (data.offset !== void 0) {
      let data2 = data.offset;
      if (typeof data2 !== "string") {
        const err6 = { instancePath: instancePath + "/offset", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data2 };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data.pins !== void 0) {
      let data3 = data.pins;
      if (data3 && typeof data3 == "object" && !Array.isArray(data3)) {
        if (Object.keys(data3).length > 150) {
          const err7 = { instancePath: instancePath + "/pins", schemaPath: "#/properties/pins/maxProperties", keyword: "maxProperties", params: { limit: 150 }, message: "must NOT have more than 150 properties", schema: 150, parentSchema: schema20.properties.pins, data: data3 };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
        if (Object.keys(data3).length < 1) {
          const err8 = { instancePath: instancePath + "/pins", schemaPath: "#/properties/pins/minProperties", keyword: "minProperties", params: { limit: 1 }, message: "must NOT have fewer than 1 properties", schema: 1, parentSchema: schema20.properties.pins, data: data3 };
          if (vErrors === null) {
            vErrors = [err8];
          } else {
            vErrors.push(err8);
          }
          errors++;
        }
        for (const key1 in data3) {
          const _errs10 = errors;
          if (typeof key1 === "string") {
            if (!pattern0.test(key1)) {
              const err9 = { instancePath: instancePath + "/pins", schemaPath: "#/definitions/name/pattern", keyword: "pattern", params: { pattern: "^[a-z0-9][a-z0-9-]*$" }, message: 'must match pattern "^[a-z0-9][a-z0-9-]*$"', schema: "^[a-z0-9][a-z0-9-]*$", parentSchema: schema12, data: key1, propertyName: key1 };
              if (vErrors === null) {
                vErrors = [err9];
              } else {
                vErrors.push(err9);
              }
              errors++;
            }
          } else {
            const err10 = { instancePath: instancePath + "/pins", schemaPath: "#/definitions/name/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema12.type, parentSchema: schema12, data: key1, propertyName: key1 };
            if (vErrors === null) {
              vErrors = [err10];
            } else {
              vErrors.push(err10);
            }
            errors++;
          }
          var valid2 = _errs10 === errors;
          if (!valid2) {
            const err11 = { instancePath: instancePath + "/pins", schemaPath: "#/properties/pins/propertyNames", keyword: "propertyNames", params: { propertyName: key1 }, message: "property name must be valid", schema: schema20.properties.pins.propertyNames, parentSchema: schema20.properties.pins, data: data3 };
            if (vErrors === null) {
              vErrors = [err11];
            } else {
              vErrors.push(err11);
            }
            errors++;
          }
        }
        for (const key2 in data3) {
          if (!validate13(data3[key2], { instancePath: instancePath + "/pins/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), parentData: data3, parentDataProperty: key2, rootData })) {
            vErrors = vErrors === null ? validate13.errors : vErrors.concat(validate13.errors);
            errors = vErrors.length;
          }
        }
      } else {
        const err12 = { instancePath: instancePath + "/pins", schemaPath: "#/properties/pins/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema20.properties.pins.type, parentSchema: schema20.properties.pins, data: data3 };
        if (vErrors === null) {
          vErrors = [err12];
        } else {
          vErrors.push(err12);
        }
        errors++;
      }
    }
  } else {
    const err13 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema20.type, parentSchema: schema20, data };
    if (vErrors === null) {
      vErrors = [err13];
    } else {
      vErrors.push(err13);
    }
    errors++;
  }
  validate12.errors = vErrors;
  return errors === 0;
}
var schema37 = { "title": "HallSwitchDraft", "description": "Hall switch with open-collector output. Pins: feed, signal, ground.", "type": "object", "additionalProperties": false, "required": ["kind"], "properties": { "kind": { "const": "hall-switch" }, "words": { "title": "Plain name", "description": "What people call it.", "type": "string", "maxLength": 120, "examples": ["crankshaft position sensor"] }, "draws": { "title": "Supply current", "description": "Above the least voltage.", "$ref": "#/definitions/quantity", "default": "3 mA to 20 mA", "examples": ["8 mA +/- 40 %"] }, "minimum": { "title": "Least supply voltage", "description": "Below nine tenths of this the output stays off.", "$ref": "#/definitions/quantity", "default": "3 V to 4.5 V", "examples": ["3.8 V"] }, "on": { "title": "Output resistance when on", "description": "Signal to ground.", "$ref": "#/definitions/quantity", "default": "20 ohm to 200 ohm", "examples": ["50 ohm +/- 50 %"] }, "off": { "title": "Output leakage when off", "description": "As a resistance, signal to ground.", "$ref": "#/definitions/quantity", "default": "1 Mohm to 20 Mohm", "examples": ["2 Mohm"] }, "limit": { "title": "Output current limit", "description": "The output protects itself at this current.", "$ref": "#/definitions/quantity", "default": "25 mA to 60 mA", "examples": ["40 mA"] } } };
function validate15(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.kind === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "kind" }, message: "must have required property 'kind'", schema: schema37.required, parentSchema: schema37, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "kind" || key0 === "words" || key0 === "draws" || key0 === "minimum" || key0 === "on" || key0 === "off" || key0 === "limit")) {
        const err1 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema37, data };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.kind !== void 0) {
      let data0 = data.kind;
      if ("hall-switch" !== data0) {
        const err2 = { instancePath: instancePath + "/kind", schemaPath: "#/properties/kind/const", keyword: "const", params: { allowedValue: "hall-switch" }, message: "must be equal to constant", schema: "hall-switch", parentSchema: schema37.properties.kind, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.words !== void 0) {
      let data1 = data.words;
      if (typeof data1 === "string") {
        if (func3(data1) > 120) {
          const err3 = { instancePath: instancePath + "/words", schemaPath: "#/properties/words/maxLength", keyword: "maxLength", params: { limit: 120 }, message: "must NOT have more than 120 characters", schema: 120, parentSchema: schema37.properties.words, data: data1 };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
      } else {
        const err4 = { instancePath: instancePath + "/words", schemaPath: "#/properties/words/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema37.properties.words.type, parentSchema: schema37.properties.words, data: data1 };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data.draws !== void 0) {
      let data2 = data.draws;
      if (typeof data2 !== "string") {
        const err5 = { instancePath: instancePath + "/draws", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data2 };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
    if (data.minimum !== void 0) {
      let data3 = data.minimum;
      if (typeof data3 !== "string") {
        const err6 = { instancePath: instancePath + "/minimum", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data3 };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data.on !== void 0) {
      let data4 = data.on;
      if (typeof data4 !== "string") {
        const err7 = { instancePath: instancePath + "/on", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data4 };
        if (vErrors === null) {
          vErrors = [err7];
        } else {
          vErrors.push(err7);
        }
        errors++;
      }
    }
    if (data.off !== void 0) {
      let data5 = data.off;
      if (typeof data5 !== "string") {
        const err8 = { instancePath: instancePath + "/off", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data5 };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
    }
    if (data.limit !== void 0) {
      let data6 = data.limit;
      if (typeof data6 !== "string") {
        const err9 = { instancePath: instancePath + "/limit", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data6 };
        if (vErrors === null) {
          vErrors = [err9];
        } else {
          vErrors.push(err9);
        }
        errors++;
      }
    }
  } else {
    const err10 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema37.type, parentSchema: schema37, data };
    if (vErrors === null) {
      vErrors = [err10];
    } else {
      vErrors.push(err10);
    }
    errors++;
  }
  validate15.errors = vErrors;
  return errors === 0;
}
var schema43 = { "title": "ReluctorDraft", "description": "Variable reluctance coil. Pins: plus, minus.", "type": "object", "additionalProperties": false, "required": ["kind"], "properties": { "kind": { "const": "reluctor" }, "words": { "title": "Plain name", "description": "What people call it.", "type": "string", "maxLength": 120, "examples": ["crankshaft position sensor"] }, "ohms": { "title": "Coil resistance", "description": "Between its pins, at the harness temperature.", "$ref": "#/definitions/quantity", "default": "190 ohm to 2.5 kohm", "examples": ["900 ohm +/- 15 %"] }, "cranking": { "title": "Peak voltage while cranking", "description": "Of the unloaded coil.", "$ref": "#/definitions/quantity", "default": "1 V +/- 40 %", "examples": ["1 V +/- 40 %"] }, "running": { "title": "Peak voltage at idle", "description": "Of the unloaded coil.", "$ref": "#/definitions/quantity", "default": "4 V +/- 40 %", "examples": ["4 V +/- 40 %"] }, "by-hand": { "title": "Peak voltage when moved by hand", "description": "Of the unloaded coil, moved as fast as a hand can.", "$ref": "#/definitions/quantity", "default": "0.8 V +/- 30 %", "examples": ["0.8 V +/- 30 %"] } } };
function validate16(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.kind === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "kind" }, message: "must have required property 'kind'", schema: schema43.required, parentSchema: schema43, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "kind" || key0 === "words" || key0 === "ohms" || key0 === "cranking" || key0 === "running" || key0 === "by-hand")) {
        const err1 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema43, data };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.kind !== void 0) {
      let data0 = data.kind;
      if ("reluctor" !== data0) {
        const err2 = { instancePath: instancePath + "/kind", schemaPath: "#/properties/kind/const", keyword: "const", params: { allowedValue: "reluctor" }, message: "must be equal to constant", schema: "reluctor", parentSchema: schema43.properties.kind, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.words !== void 0) {
      let data1 = data.words;
      if (typeof data1 === "string") {
        if (func3(data1) > 120) {
          const err3 = { instancePath: instancePath + "/words", schemaPath: "#/properties/words/maxLength", keyword: "maxLength", params: { limit: 120 }, message: "must NOT have more than 120 characters", schema: 120, parentSchema: schema43.properties.words, data: data1 };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
      } else {
        const err4 = { instancePath: instancePath + "/words", schemaPath: "#/properties/words/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema43.properties.words.type, parentSchema: schema43.properties.words, data: data1 };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data.ohms !== void 0) {
      let data2 = data.ohms;
      if (typeof data2 !== "string") {
        const err5 = { instancePath: instancePath + "/ohms", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data2 };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
    if (data.cranking !== void 0) {
      let data3 = data.cranking;
      if (typeof data3 !== "string") {
        const err6 = { instancePath: instancePath + "/cranking", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data3 };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data.running !== void 0) {
      let data4 = data.running;
      if (typeof data4 !== "string") {
        const err7 = { instancePath: instancePath + "/running", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data4 };
        if (vErrors === null) {
          vErrors = [err7];
        } else {
          vErrors.push(err7);
        }
        errors++;
      }
    }
    if (data["by-hand"] !== void 0) {
      let data5 = data["by-hand"];
      if (typeof data5 !== "string") {
        const err8 = { instancePath: instancePath + "/by-hand", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data5 };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
    }
  } else {
    const err9 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema43.type, parentSchema: schema43, data };
    if (vErrors === null) {
      vErrors = [err9];
    } else {
      vErrors.push(err9);
    }
    errors++;
  }
  validate16.errors = vErrors;
  return errors === 0;
}
var schema48 = { "title": "PotentiometerDraft", "description": "One or more tracks moved together. Pins as the tracks name them.", "type": "object", "additionalProperties": false, "required": ["kind", "tracks"], "properties": { "kind": { "const": "potentiometer" }, "words": { "title": "Plain name", "description": "What people call it.", "type": "string", "maxLength": 120, "examples": ["throttle position sensor"] }, "turned": { "title": "Turned", "description": "Share of cars in which the sensor is built the other way round: what is closed here is as far from the top as it is written from the bottom.", "$ref": "#/definitions/quantity", "examples": ["30 %"] }, "tracks": { "title": "Tracks", "description": "Each track by its name.", "type": "object", "minProperties": 1, "propertyNames": { "$ref": "#/definitions/name" }, "additionalProperties": { "title": "TrackDraft", "type": "object", "additionalProperties": false, "required": ["feed", "signal", "ground", "ohms"], "properties": { "feed": { "title": "Feed pin", "description": "Name of the pin at the top of the track.", "$ref": "#/definitions/name", "examples": ["feed"] }, "signal": { "title": "Wiper pin", "description": "Name of the pin of the wiper.", "$ref": "#/definitions/name", "examples": ["signal"] }, "ground": { "title": "Ground pin", "description": "Name of the pin at the foot of the track.", "$ref": "#/definitions/name", "examples": ["ground"] }, "ohms": { "title": "Track resistance", "description": "Feed to ground.", "$ref": "#/definitions/quantity", "examples": ["4 kohm +/- 20 %"] }, "wiper": { "title": "Wiper resistance", "description": "Between the track and the pin.", "$ref": "#/definitions/quantity", "default": "200 ohm +/- 50 %", "examples": ["200 ohm"] }, "closed": { "title": "Position at rest", "description": "Part of the track between ground and wiper, at rest.", "$ref": "#/definitions/quantity", "examples": ["12 % +/- 2 %"] }, "open": { "title": "Position fully moved", "description": "Part of the track between ground and wiper, fully moved.", "$ref": "#/definitions/quantity", "examples": ["90 % +/- 2 %"] }, "beside": { "title": "Beside", "description": "Another track, which tells where this one ends; then closed and open are left out.", "$ref": "#/definitions/name", "examples": ["track-1"] }, "runs": { "title": "How it runs relative to it", "description": "half of its position, opposite to it, or lower by a constant; one, or one of several.", "$ref": "#/definitions/quantity", "default": "half", "examples": ["one of: half 50 %, opposite 30 %, lower 20 %"] }, "lower": { "title": "How far lower", "description": "Part of the track, where it runs lower.", "$ref": "#/definitions/quantity", "default": "6 % to 10 %", "examples": ["6 % to 10 %"] } } } } } };
function validate17(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.kind === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "kind" }, message: "must have required property 'kind'", schema: schema48.required, parentSchema: schema48, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.tracks === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "tracks" }, message: "must have required property 'tracks'", schema: schema48.required, parentSchema: schema48, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "kind" || key0 === "words" || key0 === "turned" || key0 === "tracks")) {
        const err2 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema48, data };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.kind !== void 0) {
      let data0 = data.kind;
      if ("potentiometer" !== data0) {
        const err3 = { instancePath: instancePath + "/kind", schemaPath: "#/properties/kind/const", keyword: "const", params: { allowedValue: "potentiometer" }, message: "must be equal to constant", schema: "potentiometer", parentSchema: schema48.properties.kind, data: data0 };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data.words !== void 0) {
      let data1 = data.words;
      if (typeof data1 === "string") {
        if (func3(data1) > 120) {
          const err4 = { instancePath: instancePath + "/words", schemaPath: "#/properties/words/maxLength", keyword: "maxLength", params: { limit: 120 }, message: "must NOT have more than 120 characters", schema: 120, parentSchema: schema48.properties.words, data: data1 };
          if (vErrors === null) {
            vErrors = [err4];
          } else {
            vErrors.push(err4);
          }
          errors++;
        }
      } else {
        const err5 = { instancePath: instancePath + "/words", schemaPath: "#/properties/words/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema48.properties.words.type, parentSchema: schema48.properties.words, data: data1 };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
    if (data.turned !== void 0) {
      let data2 = data.turned;
      if (typeof data2 !== "string") {
        const err6 = { instancePath: instancePath + "/turned", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data2 };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data.tracks !== void 0) {
      let data3 = data.tracks;
      if (data3 && typeof data3 == "object" && !Array.isArray(data3)) {
        if (Object.keys(data3).length < 1) {
          const err7 = { instancePath: instancePath + "/tracks", schemaPath: "#/properties/tracks/minProperties", keyword: "minProperties", params: { limit: 1 }, message: "must NOT have fewer than 1 properties", schema: 1, parentSchema: schema48.properties.tracks, data: data3 };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
        for (const key1 in data3) {
          const _errs10 = errors;
          if (typeof key1 === "string") {
            if (!pattern0.test(key1)) {
              const err8 = { instancePath: instancePath + "/tracks", schemaPath: "#/definitions/name/pattern", keyword: "pattern", params: { pattern: "^[a-z0-9][a-z0-9-]*$" }, message: 'must match pattern "^[a-z0-9][a-z0-9-]*$"', schema: "^[a-z0-9][a-z0-9-]*$", parentSchema: schema12, data: key1, propertyName: key1 };
              if (vErrors === null) {
                vErrors = [err8];
              } else {
                vErrors.push(err8);
              }
              errors++;
            }
          } else {
            const err9 = { instancePath: instancePath + "/tracks", schemaPath: "#/definitions/name/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema12.type, parentSchema: schema12, data: key1, propertyName: key1 };
            if (vErrors === null) {
              vErrors = [err9];
            } else {
              vErrors.push(err9);
            }
            errors++;
          }
          var valid2 = _errs10 === errors;
          if (!valid2) {
            const err10 = { instancePath: instancePath + "/tracks", schemaPath: "#/properties/tracks/propertyNames", keyword: "propertyNames", params: { propertyName: key1 }, message: "property name must be valid", schema: schema48.properties.tracks.propertyNames, parentSchema: schema48.properties.tracks, data: data3 };
            if (vErrors === null) {
              vErrors = [err10];
            } else {
              vErrors.push(err10);
            }
            errors++;
          }
        }
        for (const key2 in data3) {
          let data4 = data3[key2];
          if (data4 && typeof data4 == "object" && !Array.isArray(data4)) {
            if (data4.feed === void 0) {
              const err11 = { instancePath: instancePath + "/tracks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/properties/tracks/additionalProperties/required", keyword: "required", params: { missingProperty: "feed" }, message: "must have required property 'feed'", schema: schema48.properties.tracks.additionalProperties.required, parentSchema: schema48.properties.tracks.additionalProperties, data: data4 };
              if (vErrors === null) {
                vErrors = [err11];
              } else {
                vErrors.push(err11);
              }
              errors++;
            }
            if (data4.signal === void 0) {
              const err12 = { instancePath: instancePath + "/tracks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/properties/tracks/additionalProperties/required", keyword: "required", params: { missingProperty: "signal" }, message: "must have required property 'signal'", schema: schema48.properties.tracks.additionalProperties.required, parentSchema: schema48.properties.tracks.additionalProperties, data: data4 };
              if (vErrors === null) {
                vErrors = [err12];
              } else {
                vErrors.push(err12);
              }
              errors++;
            }
            if (data4.ground === void 0) {
              const err13 = { instancePath: instancePath + "/tracks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/properties/tracks/additionalProperties/required", keyword: "required", params: { missingProperty: "ground" }, message: "must have required property 'ground'", schema: schema48.properties.tracks.additionalProperties.required, parentSchema: schema48.properties.tracks.additionalProperties, data: data4 };
              if (vErrors === null) {
                vErrors = [err13];
              } else {
                vErrors.push(err13);
              }
              errors++;
            }
            if (data4.ohms === void 0) {
              const err14 = { instancePath: instancePath + "/tracks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/properties/tracks/additionalProperties/required", keyword: "required", params: { missingProperty: "ohms" }, message: "must have required property 'ohms'", schema: schema48.properties.tracks.additionalProperties.required, parentSchema: schema48.properties.tracks.additionalProperties, data: data4 };
              if (vErrors === null) {
                vErrors = [err14];
              } else {
                vErrors.push(err14);
              }
              errors++;
            }
            for (const key3 in data4) {
              if (!func2.call(schema48.properties.tracks.additionalProperties.properties, key3)) {
                const err15 = { instancePath: instancePath + "/tracks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/properties/tracks/additionalProperties/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key3 }, message: "must NOT have additional properties", schema: false, parentSchema: schema48.properties.tracks.additionalProperties, data: data4 };
                if (vErrors === null) {
                  vErrors = [err15];
                } else {
                  vErrors.push(err15);
                }
                errors++;
              }
            }
            if (data4.feed !== void 0) {
              let data5 = data4.feed;
              if (typeof data5 === "string") {
                if (!pattern0.test(data5)) {
                  const err16 = { instancePath: instancePath + "/tracks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/feed", schemaPath: "#/definitions/name/pattern", keyword: "pattern", params: { pattern: "^[a-z0-9][a-z0-9-]*$" }, message: 'must match pattern "^[a-z0-9][a-z0-9-]*$"', schema: "^[a-z0-9][a-z0-9-]*$", parentSchema: schema12, data: data5 };
                  if (vErrors === null) {
                    vErrors = [err16];
                  } else {
                    vErrors.push(err16);
                  }
                  errors++;
                }
              } else {
                const err17 = { instancePath: instancePath + "/tracks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/feed", schemaPath: "#/definitions/name/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema12.type, parentSchema: schema12, data: data5 };
                if (vErrors === null) {
                  vErrors = [err17];
                } else {
                  vErrors.push(err17);
                }
                errors++;
              }
            }
            if (data4.signal !== void 0) {
              let data6 = data4.signal;
              if (typeof data6 === "string") {
                if (!pattern0.test(data6)) {
                  const err18 = { instancePath: instancePath + "/tracks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/signal", schemaPath: "#/definitions/name/pattern", keyword: "pattern", params: { pattern: "^[a-z0-9][a-z0-9-]*$" }, message: 'must match pattern "^[a-z0-9][a-z0-9-]*$"', schema: "^[a-z0-9][a-z0-9-]*$", parentSchema: schema12, data: data6 };
                  if (vErrors === null) {
                    vErrors = [err18];
                  } else {
                    vErrors.push(err18);
                  }
                  errors++;
                }
              } else {
                const err19 = { instancePath: instancePath + "/tracks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/signal", schemaPath: "#/definitions/name/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema12.type, parentSchema: schema12, data: data6 };
                if (vErrors === null) {
                  vErrors = [err19];
                } else {
                  vErrors.push(err19);
                }
                errors++;
              }
            }
            if (data4.ground !== void 0) {
              let data7 = data4.ground;
              if (typeof data7 === "string") {
                if (!pattern0.test(data7)) {
                  const err20 = { instancePath: instancePath + "/tracks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/ground", schemaPath: "#/definitions/name/pattern", keyword: "pattern", params: { pattern: "^[a-z0-9][a-z0-9-]*$" }, message: 'must match pattern "^[a-z0-9][a-z0-9-]*$"', schema: "^[a-z0-9][a-z0-9-]*$", parentSchema: schema12, data: data7 };
                  if (vErrors === null) {
                    vErrors = [err20];
                  } else {
                    vErrors.push(err20);
                  }
                  errors++;
                }
              } else {
                const err21 = { instancePath: instancePath + "/tracks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/ground", schemaPath: "#/definitions/name/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema12.type, parentSchema: schema12, data: data7 };
                if (vErrors === null) {
                  vErrors = [err21];
                } else {
                  vErrors.push(err21);
                }
                errors++;
              }
            }
            if (data4.ohms !== void 0) {
              let data8 = data4.ohms;
              if (typeof data8 !== "string") {
                const err22 = { instancePath: instancePath + "/tracks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/ohms", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data8 };
                if (vErrors === null) {
                  vErrors = [err22];
                } else {
                  vErrors.push(err22);
                }
                errors++;
              }
            }
            if (data4.wiper !== void 0) {
              let data9 = data4.wiper;
              if (typeof data9 !== "string") {
                const err23 = { instancePath: instancePath + "/tracks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/wiper", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data9 };
                if (vErrors === null) {
                  vErrors = [err23];
                } else {
                  vErrors.push(err23);
                }
                errors++;
              }
            }
            if (data4.closed !== void 0) {
              let data10 = data4.closed;
              if (typeof data10 !== "string") {
                const err24 = { instancePath: instancePath + "/tracks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/closed", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data10 };
                if (vErrors === null) {
                  vErrors = [err24];
                } else {
                  vErrors.push(err24);
                }
                errors++;
              }
            }
            if (data4.open !== void 0) {
              let data11 = data4.open;
              if (typeof data11 !== "string") {
                const err25 = { instancePath: instancePath + "/tracks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/open", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data11 };
                if (vErrors === null) {
                  vErrors = [err25];
                } else {
                  vErrors.push(err25);
                }
                errors++;
              }
            }
            if (data4.beside !== void 0) {
              let data12 = data4.beside;
              if (typeof data12 === "string") {
                if (!pattern0.test(data12)) {
                  const err26 = { instancePath: instancePath + "/tracks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/beside", schemaPath: "#/definitions/name/pattern", keyword: "pattern", params: { pattern: "^[a-z0-9][a-z0-9-]*$" }, message: 'must match pattern "^[a-z0-9][a-z0-9-]*$"', schema: "^[a-z0-9][a-z0-9-]*$", parentSchema: schema12, data: data12 };
                  if (vErrors === null) {
                    vErrors = [err26];
                  } else {
                    vErrors.push(err26);
                  }
                  errors++;
                }
              } else {
                const err27 = { instancePath: instancePath + "/tracks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/beside", schemaPath: "#/definitions/name/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema12.type, parentSchema: schema12, data: data12 };
                if (vErrors === null) {
                  vErrors = [err27];
                } else {
                  vErrors.push(err27);
                }
                errors++;
              }
            }
            if (data4.runs !== void 0) {
              let data13 = data4.runs;
              if (typeof data13 !== "string") {
                const err28 = { instancePath: instancePath + "/tracks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/runs", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data13 };
                if (vErrors === null) {
                  vErrors = [err28];
                } else {
                  vErrors.push(err28);
                }
                errors++;
              }
            }
            if (data4.lower !== void 0) {
              let data14 = data4.lower;
              if (typeof data14 !== "string") {
                const err29 = { instancePath: instancePath + "/tracks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/lower", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data14 };
                if (vErrors === null) {
                  vErrors = [err29];
                } else {
                  vErrors.push(err29);
                }
                errors++;
              }
            }
          } else {
            const err30 = { instancePath: instancePath + "/tracks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/properties/tracks/additionalProperties/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema48.properties.tracks.additionalProperties.type, parentSchema: schema48.properties.tracks.additionalProperties, data: data4 };
            if (vErrors === null) {
              vErrors = [err30];
            } else {
              vErrors.push(err30);
            }
            errors++;
          }
        }
      } else {
        const err31 = { instancePath: instancePath + "/tracks", schemaPath: "#/properties/tracks/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema48.properties.tracks.type, parentSchema: schema48.properties.tracks, data: data3 };
        if (vErrors === null) {
          vErrors = [err31];
        } else {
          vErrors.push(err31);
        }
        errors++;
      }
    }
  } else {
    const err32 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema48.type, parentSchema: schema48, data };
    if (vErrors === null) {
      vErrors = [err32];
    } else {
      vErrors.push(err32);
    }
    errors++;
  }
  validate17.errors = vErrors;
  return errors === 0;
}
var schema61 = { "title": "CurrentSwitchDraft", "description": "Two-wire active sensor that switches between two currents. Pins: feed, signal.", "type": "object", "additionalProperties": false, "required": ["kind"], "properties": { "kind": { "const": "current-switch" }, "words": { "title": "Plain name", "description": "What people call it.", "type": "string", "maxLength": 120, "examples": ["left front wheel speed sensor"] }, "low": { "title": "Small current", "description": "Of the two.", "$ref": "#/definitions/quantity", "default": "7 mA +/- 20 %", "examples": ["7 mA +/- 15 %"] }, "high": { "title": "Large current", "description": "Of the two.", "$ref": "#/definitions/quantity", "default": "14 mA +/- 20 %", "examples": ["14 mA +/- 15 %"] }, "minimum": { "title": "Least voltage across it", "description": "Below this the currents fall in proportion.", "$ref": "#/definitions/quantity", "default": "3 V to 4.5 V", "examples": ["4.5 V"] }, "reverse": { "title": "Resistance backwards", "description": "With the two wires swapped.", "$ref": "#/definitions/quantity", "default": "1 Mohm", "examples": ["1 Mohm"] } } };
function validate18(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.kind === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "kind" }, message: "must have required property 'kind'", schema: schema61.required, parentSchema: schema61, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "kind" || key0 === "words" || key0 === "low" || key0 === "high" || key0 === "minimum" || key0 === "reverse")) {
        const err1 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema61, data };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.kind !== void 0) {
      let data0 = data.kind;
      if ("current-switch" !== data0) {
        const err2 = { instancePath: instancePath + "/kind", schemaPath: "#/properties/kind/const", keyword: "const", params: { allowedValue: "current-switch" }, message: "must be equal to constant", schema: "current-switch", parentSchema: schema61.properties.kind, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.words !== void 0) {
      let data1 = data.words;
      if (typeof data1 === "string") {
        if (func3(data1) > 120) {
          const err3 = { instancePath: instancePath + "/words", schemaPath: "#/properties/words/maxLength", keyword: "maxLength", params: { limit: 120 }, message: "must NOT have more than 120 characters", schema: 120, parentSchema: schema61.properties.words, data: data1 };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
      } else {
        const err4 = { instancePath: instancePath + "/words", schemaPath: "#/properties/words/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema61.properties.words.type, parentSchema: schema61.properties.words, data: data1 };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data.low !== void 0) {
      let data2 = data.low;
      if (typeof data2 !== "string") {
        const err5 = { instancePath: instancePath + "/low", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data2 };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
    if (data.high !== void 0) {
      let data3 = data.high;
      if (typeof data3 !== "string") {
        const err6 = { instancePath: instancePath + "/high", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data3 };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data.minimum !== void 0) {
      let data4 = data.minimum;
      if (typeof data4 !== "string") {
        const err7 = { instancePath: instancePath + "/minimum", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data4 };
        if (vErrors === null) {
          vErrors = [err7];
        } else {
          vErrors.push(err7);
        }
        errors++;
      }
    }
    if (data.reverse !== void 0) {
      let data5 = data.reverse;
      if (typeof data5 !== "string") {
        const err8 = { instancePath: instancePath + "/reverse", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data5 };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
    }
  } else {
    const err9 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema61.type, parentSchema: schema61, data };
    if (vErrors === null) {
      vErrors = [err9];
    } else {
      vErrors.push(err9);
    }
    errors++;
  }
  validate18.errors = vErrors;
  return errors === 0;
}
var schema66 = { "title": "FuseDraft", "description": "A fuse. Pins: in, out.", "type": "object", "additionalProperties": false, "required": ["kind"], "properties": { "kind": { "const": "fuse" }, "words": { "title": "Plain name", "description": "What people call it.", "type": "string", "maxLength": 120, "examples": ["fuse F12"] }, "amps": { "title": "Rating", "description": "It blows above 1.35 times this.", "$ref": "#/definitions/quantity", "default": "10 A", "examples": ["10 A"] }, "ohms": { "title": "Resistance", "description": "When whole.", "$ref": "#/definitions/quantity", "default": "8 mohm", "examples": ["8 mohm"] } } };
function validate19(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.kind === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "kind" }, message: "must have required property 'kind'", schema: schema66.required, parentSchema: schema66, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "kind" || key0 === "words" || key0 === "amps" || key0 === "ohms")) {
        const err1 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema66, data };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.kind !== void 0) {
      let data0 = data.kind;
      if ("fuse" !== data0) {
        const err2 = { instancePath: instancePath + "/kind", schemaPath: "#/properties/kind/const", keyword: "const", params: { allowedValue: "fuse" }, message: "must be equal to constant", schema: "fuse", parentSchema: schema66.properties.kind, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.words !== void 0) {
      let data1 = data.words;
      if (typeof data1 === "string") {
        if (func3(data1) > 120) {
          const err3 = { instancePath: instancePath + "/words", schemaPath: "#/properties/words/maxLength", keyword: "maxLength", params: { limit: 120 }, message: "must NOT have more than 120 characters", schema: 120, parentSchema: schema66.properties.words, data: data1 };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
      } else {
        const err4 = { instancePath: instancePath + "/words", schemaPath: "#/properties/words/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema66.properties.words.type, parentSchema: schema66.properties.words, data: data1 };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data.amps !== void 0) {
      let data2 = data.amps;
      if (typeof data2 !== "string") {
        const err5 = { instancePath: instancePath + "/amps", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data2 };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
    if (data.ohms !== void 0) {
      let data3 = data.ohms;
      if (typeof data3 !== "string") {
        const err6 = { instancePath: instancePath + "/ohms", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data3 };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
  } else {
    const err7 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema66.type, parentSchema: schema66, data };
    if (vErrors === null) {
      vErrors = [err7];
    } else {
      vErrors.push(err7);
    }
    errors++;
  }
  validate19.errors = vErrors;
  return errors === 0;
}
var schema69 = { "title": "RelayDraft", "description": "A relay contact. Pins, with the terminal numbers of DIN 72552: 30 (in), 87 (out); with a coil also 86 (its feed) and 85 (its switched side). Without a coil the contact is closed whenever the key is on.", "type": "object", "additionalProperties": false, "required": ["kind"], "properties": { "kind": { "const": "relay" }, "words": { "title": "Plain name", "description": "What people call it.", "type": "string", "maxLength": 120, "examples": ["main relay"] }, "ohms": { "title": "Contact resistance", "description": "When closed.", "$ref": "#/definitions/quantity", "default": "5 mohm to 50 mohm", "examples": ["20 mohm"] }, "coil": { "title": "Coil", "description": "Resistance between 86 and 85.", "$ref": "#/definitions/quantity", "examples": ["60 ohm to 120 ohm"] }, "pulls-in": { "title": "Pulls in", "description": "The contact closes from this voltage at the coil.", "$ref": "#/definitions/quantity", "default": "5 V to 7.5 V", "examples": ["5 V to 7.5 V"] } } };
function validate20(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.kind === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "kind" }, message: "must have required property 'kind'", schema: schema69.required, parentSchema: schema69, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "kind" || key0 === "words" || key0 === "ohms" || key0 === "coil" || key0 === "pulls-in")) {
        const err1 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema69, data };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.kind !== void 0) {
      let data0 = data.kind;
      if ("relay" !== data0) {
        const err2 = { instancePath: instancePath + "/kind", schemaPath: "#/properties/kind/const", keyword: "const", params: { allowedValue: "relay" }, message: "must be equal to constant", schema: "relay", parentSchema: schema69.properties.kind, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.words !== void 0) {
      let data1 = data.words;
      if (typeof data1 === "string") {
        if (func3(data1) > 120) {
          const err3 = { instancePath: instancePath + "/words", schemaPath: "#/properties/words/maxLength", keyword: "maxLength", params: { limit: 120 }, message: "must NOT have more than 120 characters", schema: 120, parentSchema: schema69.properties.words, data: data1 };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
      } else {
        const err4 = { instancePath: instancePath + "/words", schemaPath: "#/properties/words/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema69.properties.words.type, parentSchema: schema69.properties.words, data: data1 };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data.ohms !== void 0) {
      let data2 = data.ohms;
      if (typeof data2 !== "string") {
        const err5 = { instancePath: instancePath + "/ohms", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data2 };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
    if (data.coil !== void 0) {
      let data3 = data.coil;
      if (typeof data3 !== "string") {
        const err6 = { instancePath: instancePath + "/coil", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data3 };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data["pulls-in"] !== void 0) {
      let data4 = data["pulls-in"];
      if (typeof data4 !== "string") {
        const err7 = { instancePath: instancePath + "/pulls-in", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data4 };
        if (vErrors === null) {
          vErrors = [err7];
        } else {
          vErrors.push(err7);
        }
        errors++;
      }
    }
  } else {
    const err8 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema69.type, parentSchema: schema69, data };
    if (vErrors === null) {
      vErrors = [err8];
    } else {
      vErrors.push(err8);
    }
    errors++;
  }
  validate20.errors = vErrors;
  return errors === 0;
}
var schema73 = { "title": "GroundPointDraft", "description": "A stud on the body. Pin: eyelet.", "type": "object", "additionalProperties": false, "required": ["kind"], "properties": { "kind": { "const": "ground-point" }, "words": { "title": "Plain name", "description": "What people call it.", "type": "string", "maxLength": 120, "examples": ["ground point behind the battery"] }, "ohms": { "title": "Resistance to battery negative", "description": "Through body and ground cable.", "$ref": "#/definitions/quantity", "default": "2 mohm to 20 mohm", "examples": ["5 mohm"] }, "offset": { "title": "Above battery negative", "description": "What other loads drop along it, key on.", "$ref": "#/definitions/quantity", "examples": ["0.2 mV to 40 mV"] } } };
function validate21(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.kind === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "kind" }, message: "must have required property 'kind'", schema: schema73.required, parentSchema: schema73, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "kind" || key0 === "words" || key0 === "ohms" || key0 === "offset")) {
        const err1 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema73, data };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.kind !== void 0) {
      let data0 = data.kind;
      if ("ground-point" !== data0) {
        const err2 = { instancePath: instancePath + "/kind", schemaPath: "#/properties/kind/const", keyword: "const", params: { allowedValue: "ground-point" }, message: "must be equal to constant", schema: "ground-point", parentSchema: schema73.properties.kind, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.words !== void 0) {
      let data1 = data.words;
      if (typeof data1 === "string") {
        if (func3(data1) > 120) {
          const err3 = { instancePath: instancePath + "/words", schemaPath: "#/properties/words/maxLength", keyword: "maxLength", params: { limit: 120 }, message: "must NOT have more than 120 characters", schema: 120, parentSchema: schema73.properties.words, data: data1 };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
      } else {
        const err4 = { instancePath: instancePath + "/words", schemaPath: "#/properties/words/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema73.properties.words.type, parentSchema: schema73.properties.words, data: data1 };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data.ohms !== void 0) {
      let data2 = data.ohms;
      if (typeof data2 !== "string") {
        const err5 = { instancePath: instancePath + "/ohms", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data2 };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
    if (data.offset !== void 0) {
      let data3 = data.offset;
      if (typeof data3 !== "string") {
        const err6 = { instancePath: instancePath + "/offset", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data3 };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
  } else {
    const err7 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema73.type, parentSchema: schema73, data };
    if (vErrors === null) {
      vErrors = [err7];
    } else {
      vErrors.push(err7);
    }
    errors++;
  }
  validate21.errors = vErrors;
  return errors === 0;
}
var schema76 = { "title": "NeighbourDraft", "description": "Another part on the same feed or ground, as a load. Pins: feed, ground.", "type": "object", "additionalProperties": false, "required": ["kind", "ohms"], "properties": { "kind": { "const": "neighbour" }, "words": { "title": "Plain name", "description": "What people call it.", "type": "string", "maxLength": 120, "examples": ["throttle position sensor"] }, "ohms": { "title": "Resistance when healthy", "description": "Feed to ground.", "$ref": "#/definitions/quantity", "examples": ["5 kohm +/- 20 %"] }, "shorted": { "title": "Resistance when shorted", "description": "When it drags the feed down.", "$ref": "#/definitions/quantity", "default": "4 ohm +/- 80 %", "examples": ["4 ohm +/- 80 %"] } } };
function validate22(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.kind === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "kind" }, message: "must have required property 'kind'", schema: schema76.required, parentSchema: schema76, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.ohms === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "ohms" }, message: "must have required property 'ohms'", schema: schema76.required, parentSchema: schema76, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "kind" || key0 === "words" || key0 === "ohms" || key0 === "shorted")) {
        const err2 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema76, data };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.kind !== void 0) {
      let data0 = data.kind;
      if ("neighbour" !== data0) {
        const err3 = { instancePath: instancePath + "/kind", schemaPath: "#/properties/kind/const", keyword: "const", params: { allowedValue: "neighbour" }, message: "must be equal to constant", schema: "neighbour", parentSchema: schema76.properties.kind, data: data0 };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data.words !== void 0) {
      let data1 = data.words;
      if (typeof data1 === "string") {
        if (func3(data1) > 120) {
          const err4 = { instancePath: instancePath + "/words", schemaPath: "#/properties/words/maxLength", keyword: "maxLength", params: { limit: 120 }, message: "must NOT have more than 120 characters", schema: 120, parentSchema: schema76.properties.words, data: data1 };
          if (vErrors === null) {
            vErrors = [err4];
          } else {
            vErrors.push(err4);
          }
          errors++;
        }
      } else {
        const err5 = { instancePath: instancePath + "/words", schemaPath: "#/properties/words/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema76.properties.words.type, parentSchema: schema76.properties.words, data: data1 };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
    if (data.ohms !== void 0) {
      let data2 = data.ohms;
      if (typeof data2 !== "string") {
        const err6 = { instancePath: instancePath + "/ohms", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data2 };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data.shorted !== void 0) {
      let data3 = data.shorted;
      if (typeof data3 !== "string") {
        const err7 = { instancePath: instancePath + "/shorted", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data3 };
        if (vErrors === null) {
          vErrors = [err7];
        } else {
          vErrors.push(err7);
        }
        errors++;
      }
    }
  } else {
    const err8 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema76.type, parentSchema: schema76, data };
    if (vErrors === null) {
      vErrors = [err8];
    } else {
      vErrors.push(err8);
    }
    errors++;
  }
  validate22.errors = vErrors;
  return errors === 0;
}
function validate11(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.kind === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "kind" }, message: "must have required property 'kind'", schema: schema19.required, parentSchema: schema19, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    const tag0 = data.kind;
    if (typeof tag0 == "string") {
      if (tag0 === "module") {
        if (!validate12(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate12.errors : vErrors.concat(validate12.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "hall-switch") {
        if (!validate15(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate15.errors : vErrors.concat(validate15.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "reluctor") {
        if (!validate16(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate16.errors : vErrors.concat(validate16.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "potentiometer") {
        if (!validate17(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate17.errors : vErrors.concat(validate17.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "current-switch") {
        if (!validate18(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate18.errors : vErrors.concat(validate18.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "fuse") {
        if (!validate19(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate19.errors : vErrors.concat(validate19.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "relay") {
        if (!validate20(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate20.errors : vErrors.concat(validate20.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "ground-point") {
        if (!validate21(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate21.errors : vErrors.concat(validate21.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "neighbour") {
        if (!validate22(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate22.errors : vErrors.concat(validate22.errors);
          errors = vErrors.length;
        }
      } else {
        const err1 = { instancePath, schemaPath: "#/discriminator", keyword: "discriminator", params: { error: "mapping", tag: "kind", tagValue: tag0 }, message: 'value of tag "kind" must be in oneOf', schema: schema19.discriminator, parentSchema: schema19, data };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    } else {
      const err2 = { instancePath, schemaPath: "#/discriminator", keyword: "discriminator", params: { error: "tag", tag: "kind", tagValue: tag0 }, message: 'tag "kind" must be string', schema: schema19.discriminator, parentSchema: schema19, data };
      if (vErrors === null) {
        vErrors = [err2];
      } else {
        vErrors.push(err2);
      }
      errors++;
    }
  } else {
    const err3 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema19.type, parentSchema: schema19, data };
    if (vErrors === null) {
      vErrors = [err3];
    } else {
      vErrors.push(err3);
    }
    errors++;
  }
  validate11.errors = vErrors;
  return errors === 0;
}
var schema80 = { "title": "WireDraft", "type": "object", "additionalProperties": false, "required": ["from", "to", "size", "length"], "properties": { "from": { "title": "From", "description": "A terminal, or a splice.", "$ref": "#/definitions/terminal", "examples": ["module.reference"] }, "to": { "title": "To", "description": "A terminal, or a splice.", "$ref": "#/definitions/terminal", "examples": ["sensor.feed"] }, "size": { "title": "Cross-section", "description": "Copper.", "$ref": "#/definitions/quantity", "examples": ["0.5 mm2"] }, "length": { "title": "Length", "description": "One way; a range where it is not known.", "$ref": "#/definitions/quantity", "examples": ["3 m", "0.5 m to 5 m"] } } };
var schema81 = { "type": "string", "pattern": "^[a-z0-9][a-z0-9-]*\\.[a-z0-9][a-z0-9-]*$" };
var pattern12 = new RegExp("^[a-z0-9][a-z0-9-]*\\.[a-z0-9][a-z0-9-]*$", "u");
function validate33(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.from === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "from" }, message: "must have required property 'from'", schema: schema80.required, parentSchema: schema80, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.to === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "to" }, message: "must have required property 'to'", schema: schema80.required, parentSchema: schema80, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    if (data.size === void 0) {
      const err2 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "size" }, message: "must have required property 'size'", schema: schema80.required, parentSchema: schema80, data };
      if (vErrors === null) {
        vErrors = [err2];
      } else {
        vErrors.push(err2);
      }
      errors++;
    }
    if (data.length === void 0) {
      const err3 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "length" }, message: "must have required property 'length'", schema: schema80.required, parentSchema: schema80, data };
      if (vErrors === null) {
        vErrors = [err3];
      } else {
        vErrors.push(err3);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "from" || key0 === "to" || key0 === "size" || key0 === "length")) {
        const err4 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema80, data };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data.from !== void 0) {
      let data0 = data.from;
      if (typeof data0 === "string") {
        if (!pattern12.test(data0)) {
          const err5 = { instancePath: instancePath + "/from", schemaPath: "#/definitions/terminal/pattern", keyword: "pattern", params: { pattern: "^[a-z0-9][a-z0-9-]*\\.[a-z0-9][a-z0-9-]*$" }, message: 'must match pattern "^[a-z0-9][a-z0-9-]*\\.[a-z0-9][a-z0-9-]*$"', schema: "^[a-z0-9][a-z0-9-]*\\.[a-z0-9][a-z0-9-]*$", parentSchema: schema81, data: data0 };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
      } else {
        const err6 = { instancePath: instancePath + "/from", schemaPath: "#/definitions/terminal/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema81.type, parentSchema: schema81, data: data0 };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data.to !== void 0) {
      let data1 = data.to;
      if (typeof data1 === "string") {
        if (!pattern12.test(data1)) {
          const err7 = { instancePath: instancePath + "/to", schemaPath: "#/definitions/terminal/pattern", keyword: "pattern", params: { pattern: "^[a-z0-9][a-z0-9-]*\\.[a-z0-9][a-z0-9-]*$" }, message: 'must match pattern "^[a-z0-9][a-z0-9-]*\\.[a-z0-9][a-z0-9-]*$"', schema: "^[a-z0-9][a-z0-9-]*\\.[a-z0-9][a-z0-9-]*$", parentSchema: schema81, data: data1 };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
      } else {
        const err8 = { instancePath: instancePath + "/to", schemaPath: "#/definitions/terminal/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema81.type, parentSchema: schema81, data: data1 };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
    }
    if (data.size !== void 0) {
      let data2 = data.size;
      if (typeof data2 !== "string") {
        const err9 = { instancePath: instancePath + "/size", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data2 };
        if (vErrors === null) {
          vErrors = [err9];
        } else {
          vErrors.push(err9);
        }
        errors++;
      }
    }
    if (data.length !== void 0) {
      let data3 = data.length;
      if (typeof data3 !== "string") {
        const err10 = { instancePath: instancePath + "/length", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data3 };
        if (vErrors === null) {
          vErrors = [err10];
        } else {
          vErrors.push(err10);
        }
        errors++;
      }
    }
  } else {
    const err11 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema80.type, parentSchema: schema80, data };
    if (vErrors === null) {
      vErrors = [err11];
    } else {
      vErrors.push(err11);
    }
    errors++;
  }
  validate33.errors = vErrors;
  return errors === 0;
}
var schema92 = { "title": "FaultChangeDraft", "type": "object", "additionalProperties": false, "properties": { "weight": { "title": "Weight", "description": "Instead of the rule's share.", "$ref": "#/definitions/weight", "examples": [2] }, "words": { "title": "Plain words", "description": "Instead of the rule's words.", "type": "string", "maxLength": 300, "examples": ["the signal pin is pushed back"] }, "repair": { "title": "Repair", "description": "Faults with the same repair need not be told apart.", "type": "string", "pattern": "^[a-z0-9][a-z0-9.-]*$", "examples": ["sensor.replace"] }, "repair-words": { "title": "Repair in words", "description": "What to do.", "type": "string", "maxLength": 300, "examples": ["Replace the pin."] }, "ohms": { "title": "Size", "description": "Resistance of the fault, its smallest and largest.", "$ref": "#/definitions/quantity", "examples": ["500 ohm +/- 80 %"] }, "ruled-out": { "title": "Ruled out because", "description": "Why this cannot happen here.", "type": "string", "maxLength": 300, "examples": ["the wire runs alone in a steel tube"] } } };
var pattern14 = new RegExp("^[a-z0-9][a-z0-9.-]*$", "u");
function validate35(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    for (const key0 in data) {
      if (!(key0 === "weight" || key0 === "words" || key0 === "repair" || key0 === "repair-words" || key0 === "ohms" || key0 === "ruled-out")) {
        const err0 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema92, data };
        if (vErrors === null) {
          vErrors = [err0];
        } else {
          vErrors.push(err0);
        }
        errors++;
      }
    }
    if (data.weight !== void 0) {
      let data0 = data.weight;
      if (typeof data0 == "number" && isFinite(data0)) {
        if (data0 > 1e3 || isNaN(data0)) {
          const err1 = { instancePath: instancePath + "/weight", schemaPath: "#/definitions/weight/maximum", keyword: "maximum", params: { comparison: "<=", limit: 1e3 }, message: "must be <= 1000", schema: 1e3, parentSchema: schema85, data: data0 };
          if (vErrors === null) {
            vErrors = [err1];
          } else {
            vErrors.push(err1);
          }
          errors++;
        }
        if (data0 < 0 || isNaN(data0)) {
          const err2 = { instancePath: instancePath + "/weight", schemaPath: "#/definitions/weight/minimum", keyword: "minimum", params: { comparison: ">=", limit: 0 }, message: "must be >= 0", schema: 0, parentSchema: schema85, data: data0 };
          if (vErrors === null) {
            vErrors = [err2];
          } else {
            vErrors.push(err2);
          }
          errors++;
        }
      } else {
        const err3 = { instancePath: instancePath + "/weight", schemaPath: "#/definitions/weight/type", keyword: "type", params: { type: "number" }, message: "must be number", schema: schema85.type, parentSchema: schema85, data: data0 };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data.words !== void 0) {
      let data1 = data.words;
      if (typeof data1 === "string") {
        if (func3(data1) > 300) {
          const err4 = { instancePath: instancePath + "/words", schemaPath: "#/properties/words/maxLength", keyword: "maxLength", params: { limit: 300 }, message: "must NOT have more than 300 characters", schema: 300, parentSchema: schema92.properties.words, data: data1 };
          if (vErrors === null) {
            vErrors = [err4];
          } else {
            vErrors.push(err4);
          }
          errors++;
        }
      } else {
        const err5 = { instancePath: instancePath + "/words", schemaPath: "#/properties/words/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema92.properties.words.type, parentSchema: schema92.properties.words, data: data1 };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
    if (data.repair !== void 0) {
      let data2 = data.repair;
      if (typeof data2 === "string") {
        if (!pattern14.test(data2)) {
          const err6 = { instancePath: instancePath + "/repair", schemaPath: "#/properties/repair/pattern", keyword: "pattern", params: { pattern: "^[a-z0-9][a-z0-9.-]*$" }, message: 'must match pattern "^[a-z0-9][a-z0-9.-]*$"', schema: "^[a-z0-9][a-z0-9.-]*$", parentSchema: schema92.properties.repair, data: data2 };
          if (vErrors === null) {
            vErrors = [err6];
          } else {
            vErrors.push(err6);
          }
          errors++;
        }
      } else {
        const err7 = { instancePath: instancePath + "/repair", schemaPath: "#/properties/repair/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema92.properties.repair.type, parentSchema: schema92.properties.repair, data: data2 };
        if (vErrors === null) {
          vErrors = [err7];
        } else {
          vErrors.push(err7);
        }
        errors++;
      }
    }
    if (data["repair-words"] !== void 0) {
      let data3 = data["repair-words"];
      if (typeof data3 === "string") {
        if (func3(data3) > 300) {
          const err8 = { instancePath: instancePath + "/repair-words", schemaPath: "#/properties/repair-words/maxLength", keyword: "maxLength", params: { limit: 300 }, message: "must NOT have more than 300 characters", schema: 300, parentSchema: schema92.properties["repair-words"], data: data3 };
          if (vErrors === null) {
            vErrors = [err8];
          } else {
            vErrors.push(err8);
          }
          errors++;
        }
      } else {
        const err9 = { instancePath: instancePath + "/repair-words", schemaPath: "#/properties/repair-words/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema92.properties["repair-words"].type, parentSchema: schema92.properties["repair-words"], data: data3 };
        if (vErrors === null) {
          vErrors = [err9];
        } else {
          vErrors.push(err9);
        }
        errors++;
      }
    }
    if (data.ohms !== void 0) {
      let data4 = data.ohms;
      if (typeof data4 !== "string") {
        const err10 = { instancePath: instancePath + "/ohms", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data4 };
        if (vErrors === null) {
          vErrors = [err10];
        } else {
          vErrors.push(err10);
        }
        errors++;
      }
    }
    if (data["ruled-out"] !== void 0) {
      let data5 = data["ruled-out"];
      if (typeof data5 === "string") {
        if (func3(data5) > 300) {
          const err11 = { instancePath: instancePath + "/ruled-out", schemaPath: "#/properties/ruled-out/maxLength", keyword: "maxLength", params: { limit: 300 }, message: "must NOT have more than 300 characters", schema: 300, parentSchema: schema92.properties["ruled-out"], data: data5 };
          if (vErrors === null) {
            vErrors = [err11];
          } else {
            vErrors.push(err11);
          }
          errors++;
        }
      } else {
        const err12 = { instancePath: instancePath + "/ruled-out", schemaPath: "#/properties/ruled-out/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema92.properties["ruled-out"].type, parentSchema: schema92.properties["ruled-out"], data: data5 };
        if (vErrors === null) {
          vErrors = [err12];
        } else {
          vErrors.push(err12);
        }
        errors++;
      }
    }
  } else {
    const err13 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema92.type, parentSchema: schema92, data };
    if (vErrors === null) {
      vErrors = [err13];
    } else {
      vErrors.push(err13);
    }
    errors++;
  }
  validate35.errors = vErrors;
  return errors === 0;
}
function validate10(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  ;
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.circuit === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "circuit" }, message: "must have required property 'circuit'", schema: schema11.required, parentSchema: schema11, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.title === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "title" }, message: "must have required property 'title'", schema: schema11.required, parentSchema: schema11, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    if (data.parts === void 0) {
      const err2 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "parts" }, message: "must have required property 'parts'", schema: schema11.required, parentSchema: schema11, data };
      if (vErrors === null) {
        vErrors = [err2];
      } else {
        vErrors.push(err2);
      }
      errors++;
    }
    if (data.wires === void 0) {
      const err3 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "wires" }, message: "must have required property 'wires'", schema: schema11.required, parentSchema: schema11, data };
      if (vErrors === null) {
        vErrors = [err3];
      } else {
        vErrors.push(err3);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!func2.call(schema11.properties, key0)) {
        const err4 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11, data };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data.circuit !== void 0) {
      let data0 = data.circuit;
      if (typeof data0 === "string") {
        if (!pattern0.test(data0)) {
          const err5 = { instancePath: instancePath + "/circuit", schemaPath: "#/definitions/name/pattern", keyword: "pattern", params: { pattern: "^[a-z0-9][a-z0-9-]*$" }, message: 'must match pattern "^[a-z0-9][a-z0-9-]*$"', schema: "^[a-z0-9][a-z0-9-]*$", parentSchema: schema12, data: data0 };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
      } else {
        const err6 = { instancePath: instancePath + "/circuit", schemaPath: "#/definitions/name/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema12.type, parentSchema: schema12, data: data0 };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data.title !== void 0) {
      let data1 = data.title;
      if (typeof data1 === "string") {
        if (func3(data1) > 120) {
          const err7 = { instancePath: instancePath + "/title", schemaPath: "#/properties/title/maxLength", keyword: "maxLength", params: { limit: 120 }, message: "must NOT have more than 120 characters", schema: 120, parentSchema: schema11.properties.title, data: data1 };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
      } else {
        const err8 = { instancePath: instancePath + "/title", schemaPath: "#/properties/title/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.title.type, parentSchema: schema11.properties.title, data: data1 };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
    }
    if (data.notes !== void 0) {
      let data2 = data.notes;
      if (typeof data2 === "string") {
        if (func3(data2) > 2e3) {
          const err9 = { instancePath: instancePath + "/notes", schemaPath: "#/properties/notes/maxLength", keyword: "maxLength", params: { limit: 2e3 }, message: "must NOT have more than 2000 characters", schema: 2e3, parentSchema: schema11.properties.notes, data: data2 };
          if (vErrors === null) {
            vErrors = [err9];
          } else {
            vErrors.push(err9);
          }
          errors++;
        }
      } else {
        const err10 = { instancePath: instancePath + "/notes", schemaPath: "#/properties/notes/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.notes.type, parentSchema: schema11.properties.notes, data: data2 };
        if (vErrors === null) {
          vErrors = [err10];
        } else {
          vErrors.push(err10);
        }
        errors++;
      }
    }
    if (data.temperature !== void 0) {
      let data3 = data.temperature;
      if (typeof data3 !== "string") {
        const err11 = { instancePath: instancePath + "/temperature", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data3 };
        if (vErrors === null) {
          vErrors = [err11];
        } else {
          vErrors.push(err11);
        }
        errors++;
      }
    }
    if (data.supply !== void 0) {
      let data4 = data.supply;
      if (data4 && typeof data4 == "object" && !Array.isArray(data4)) {
        for (const key1 in data4) {
          if (!(key1 === "battery" || key1 === "cranking" || key1 === "running" || key1 === "ohms")) {
            const err12 = { instancePath: instancePath + "/supply", schemaPath: "#/properties/supply/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key1 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11.properties.supply, data: data4 };
            if (vErrors === null) {
              vErrors = [err12];
            } else {
              vErrors.push(err12);
            }
            errors++;
          }
        }
        if (data4.battery !== void 0) {
          let data5 = data4.battery;
          if (typeof data5 !== "string") {
            const err13 = { instancePath: instancePath + "/supply/battery", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data5 };
            if (vErrors === null) {
              vErrors = [err13];
            } else {
              vErrors.push(err13);
            }
            errors++;
          }
        }
        if (data4.cranking !== void 0) {
          let data6 = data4.cranking;
          if (typeof data6 !== "string") {
            const err14 = { instancePath: instancePath + "/supply/cranking", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data6 };
            if (vErrors === null) {
              vErrors = [err14];
            } else {
              vErrors.push(err14);
            }
            errors++;
          }
        }
        if (data4.running !== void 0) {
          let data7 = data4.running;
          if (typeof data7 !== "string") {
            const err15 = { instancePath: instancePath + "/supply/running", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data7 };
            if (vErrors === null) {
              vErrors = [err15];
            } else {
              vErrors.push(err15);
            }
            errors++;
          }
        }
        if (data4.ohms !== void 0) {
          let data8 = data4.ohms;
          if (typeof data8 !== "string") {
            const err16 = { instancePath: instancePath + "/supply/ohms", schemaPath: "#/definitions/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.type, parentSchema: schema13, data: data8 };
            if (vErrors === null) {
              vErrors = [err16];
            } else {
              vErrors.push(err16);
            }
            errors++;
          }
        }
      } else {
        const err17 = { instancePath: instancePath + "/supply", schemaPath: "#/properties/supply/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.supply.type, parentSchema: schema11.properties.supply, data: data4 };
        if (vErrors === null) {
          vErrors = [err17];
        } else {
          vErrors.push(err17);
        }
        errors++;
      }
    }
    if (data.parts !== void 0) {
      let data9 = data.parts;
      if (data9 && typeof data9 == "object" && !Array.isArray(data9)) {
        if (Object.keys(data9).length > 60) {
          const err18 = { instancePath: instancePath + "/parts", schemaPath: "#/properties/parts/maxProperties", keyword: "maxProperties", params: { limit: 60 }, message: "must NOT have more than 60 properties", schema: 60, parentSchema: schema11.properties.parts, data: data9 };
          if (vErrors === null) {
            vErrors = [err18];
          } else {
            vErrors.push(err18);
          }
          errors++;
        }
        if (Object.keys(data9).length < 1) {
          const err19 = { instancePath: instancePath + "/parts", schemaPath: "#/properties/parts/minProperties", keyword: "minProperties", params: { limit: 1 }, message: "must NOT have fewer than 1 properties", schema: 1, parentSchema: schema11.properties.parts, data: data9 };
          if (vErrors === null) {
            vErrors = [err19];
          } else {
            vErrors.push(err19);
          }
          errors++;
        }
        for (const key2 in data9) {
          const _errs29 = errors;
          if (typeof key2 === "string") {
            if (!pattern0.test(key2)) {
              const err20 = { instancePath: instancePath + "/parts", schemaPath: "#/definitions/name/pattern", keyword: "pattern", params: { pattern: "^[a-z0-9][a-z0-9-]*$" }, message: 'must match pattern "^[a-z0-9][a-z0-9-]*$"', schema: "^[a-z0-9][a-z0-9-]*$", parentSchema: schema12, data: key2, propertyName: key2 };
              if (vErrors === null) {
                vErrors = [err20];
              } else {
                vErrors.push(err20);
              }
              errors++;
            }
          } else {
            const err21 = { instancePath: instancePath + "/parts", schemaPath: "#/definitions/name/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema12.type, parentSchema: schema12, data: key2, propertyName: key2 };
            if (vErrors === null) {
              vErrors = [err21];
            } else {
              vErrors.push(err21);
            }
            errors++;
          }
          var valid8 = _errs29 === errors;
          if (!valid8) {
            const err22 = { instancePath: instancePath + "/parts", schemaPath: "#/properties/parts/propertyNames", keyword: "propertyNames", params: { propertyName: key2 }, message: "property name must be valid", schema: schema11.properties.parts.propertyNames, parentSchema: schema11.properties.parts, data: data9 };
            if (vErrors === null) {
              vErrors = [err22];
            } else {
              vErrors.push(err22);
            }
            errors++;
          }
        }
        for (const key3 in data9) {
          if (!validate11(data9[key3], { instancePath: instancePath + "/parts/" + key3.replace(/~/g, "~0").replace(/\//g, "~1"), parentData: data9, parentDataProperty: key3, rootData })) {
            vErrors = vErrors === null ? validate11.errors : vErrors.concat(validate11.errors);
            errors = vErrors.length;
          }
        }
      } else {
        const err23 = { instancePath: instancePath + "/parts", schemaPath: "#/properties/parts/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.parts.type, parentSchema: schema11.properties.parts, data: data9 };
        if (vErrors === null) {
          vErrors = [err23];
        } else {
          vErrors.push(err23);
        }
        errors++;
      }
    }
    if (data.wires !== void 0) {
      let data11 = data.wires;
      if (data11 && typeof data11 == "object" && !Array.isArray(data11)) {
        if (Object.keys(data11).length > 150) {
          const err24 = { instancePath: instancePath + "/wires", schemaPath: "#/properties/wires/maxProperties", keyword: "maxProperties", params: { limit: 150 }, message: "must NOT have more than 150 properties", schema: 150, parentSchema: schema11.properties.wires, data: data11 };
          if (vErrors === null) {
            vErrors = [err24];
          } else {
            vErrors.push(err24);
          }
          errors++;
        }
        if (Object.keys(data11).length < 1) {
          const err25 = { instancePath: instancePath + "/wires", schemaPath: "#/properties/wires/minProperties", keyword: "minProperties", params: { limit: 1 }, message: "must NOT have fewer than 1 properties", schema: 1, parentSchema: schema11.properties.wires, data: data11 };
          if (vErrors === null) {
            vErrors = [err25];
          } else {
            vErrors.push(err25);
          }
          errors++;
        }
        for (const key4 in data11) {
          const _errs36 = errors;
          if (typeof key4 === "string") {
            if (!pattern0.test(key4)) {
              const err26 = { instancePath: instancePath + "/wires", schemaPath: "#/definitions/name/pattern", keyword: "pattern", params: { pattern: "^[a-z0-9][a-z0-9-]*$" }, message: 'must match pattern "^[a-z0-9][a-z0-9-]*$"', schema: "^[a-z0-9][a-z0-9-]*$", parentSchema: schema12, data: key4, propertyName: key4 };
              if (vErrors === null) {
                vErrors = [err26];
              } else {
                vErrors.push(err26);
              }
              errors++;
            }
          } else {
            const err27 = { instancePath: instancePath + "/wires", schemaPath: "#/definitions/name/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema12.type, parentSchema: schema12, data: key4, propertyName: key4 };
            if (vErrors === null) {
              vErrors = [err27];
            } else {
              vErrors.push(err27);
            }
            errors++;
          }
          var valid11 = _errs36 === errors;
          if (!valid11) {
            const err28 = { instancePath: instancePath + "/wires", schemaPath: "#/properties/wires/propertyNames", keyword: "propertyNames", params: { propertyName: key4 }, message: "property name must be valid", schema: schema11.properties.wires.propertyNames, parentSchema: schema11.properties.wires, data: data11 };
            if (vErrors === null) {
              vErrors = [err28];
            } else {
              vErrors.push(err28);
            }
            errors++;
          }
        }
        for (const key5 in data11) {
          if (!validate33(data11[key5], { instancePath: instancePath + "/wires/" + key5.replace(/~/g, "~0").replace(/\//g, "~1"), parentData: data11, parentDataProperty: key5, rootData })) {
            vErrors = vErrors === null ? validate33.errors : vErrors.concat(validate33.errors);
            errors = vErrors.length;
          }
        }
      } else {
        const err29 = { instancePath: instancePath + "/wires", schemaPath: "#/properties/wires/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.wires.type, parentSchema: schema11.properties.wires, data: data11 };
        if (vErrors === null) {
          vErrors = [err29];
        } else {
          vErrors.push(err29);
        }
        errors++;
      }
    }
    if (data.target !== void 0) {
      let data13 = data.target;
      if (data13 && typeof data13 == "object" && !Array.isArray(data13)) {
        if (data13.at === void 0) {
          const err30 = { instancePath: instancePath + "/target", schemaPath: "#/properties/target/required", keyword: "required", params: { missingProperty: "at" }, message: "must have required property 'at'", schema: schema11.properties.target.required, parentSchema: schema11.properties.target, data: data13 };
          if (vErrors === null) {
            vErrors = [err30];
          } else {
            vErrors.push(err30);
          }
          errors++;
        }
        for (const key6 in data13) {
          if (!(key6 === "at" || key6 === "teeth" || key6 === "missing" || key6 === "turns" || key6 === "ring" || key6 === "on")) {
            const err31 = { instancePath: instancePath + "/target", schemaPath: "#/properties/target/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key6 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11.properties.target, data: data13 };
            if (vErrors === null) {
              vErrors = [err31];
            } else {
              vErrors.push(err31);
            }
            errors++;
          }
        }
        if (data13.at !== void 0) {
          let data14 = data13.at;
          if (typeof data14 === "string") {
            if (func3(data14) > 120) {
              const err32 = { instancePath: instancePath + "/target/at", schemaPath: "#/properties/target/properties/at/maxLength", keyword: "maxLength", params: { limit: 120 }, message: "must NOT have more than 120 characters", schema: 120, parentSchema: schema11.properties.target.properties.at, data: data14 };
              if (vErrors === null) {
                vErrors = [err32];
              } else {
                vErrors.push(err32);
              }
              errors++;
            }
          } else {
            const err33 = { instancePath: instancePath + "/target/at", schemaPath: "#/properties/target/properties/at/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.target.properties.at.type, parentSchema: schema11.properties.target.properties.at, data: data14 };
            if (vErrors === null) {
              vErrors = [err33];
            } else {
              vErrors.push(err33);
            }
            errors++;
          }
        }
        if (data13.teeth !== void 0) {
          let data15 = data13.teeth;
          if (!(typeof data15 == "number" && (!(data15 % 1) && !isNaN(data15)) && isFinite(data15))) {
            const err34 = { instancePath: instancePath + "/target/teeth", schemaPath: "#/properties/target/properties/teeth/type", keyword: "type", params: { type: "integer" }, message: "must be integer", schema: schema11.properties.target.properties.teeth.type, parentSchema: schema11.properties.target.properties.teeth, data: data15 };
            if (vErrors === null) {
              vErrors = [err34];
            } else {
              vErrors.push(err34);
            }
            errors++;
          }
          if (typeof data15 == "number" && isFinite(data15)) {
            if (data15 > 1e3 || isNaN(data15)) {
              const err35 = { instancePath: instancePath + "/target/teeth", schemaPath: "#/properties/target/properties/teeth/maximum", keyword: "maximum", params: { comparison: "<=", limit: 1e3 }, message: "must be <= 1000", schema: 1e3, parentSchema: schema11.properties.target.properties.teeth, data: data15 };
              if (vErrors === null) {
                vErrors = [err35];
              } else {
                vErrors.push(err35);
              }
              errors++;
            }
            if (data15 < 1 || isNaN(data15)) {
              const err36 = { instancePath: instancePath + "/target/teeth", schemaPath: "#/properties/target/properties/teeth/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 }, message: "must be >= 1", schema: 1, parentSchema: schema11.properties.target.properties.teeth, data: data15 };
              if (vErrors === null) {
                vErrors = [err36];
              } else {
                vErrors.push(err36);
              }
              errors++;
            }
          }
        }
        if (data13.missing !== void 0) {
          let data16 = data13.missing;
          if (!(typeof data16 == "number" && (!(data16 % 1) && !isNaN(data16)) && isFinite(data16))) {
            const err37 = { instancePath: instancePath + "/target/missing", schemaPath: "#/properties/target/properties/missing/type", keyword: "type", params: { type: "integer" }, message: "must be integer", schema: schema11.properties.target.properties.missing.type, parentSchema: schema11.properties.target.properties.missing, data: data16 };
            if (vErrors === null) {
              vErrors = [err37];
            } else {
              vErrors.push(err37);
            }
            errors++;
          }
          if (typeof data16 == "number" && isFinite(data16)) {
            if (data16 > 100 || isNaN(data16)) {
              const err38 = { instancePath: instancePath + "/target/missing", schemaPath: "#/properties/target/properties/missing/maximum", keyword: "maximum", params: { comparison: "<=", limit: 100 }, message: "must be <= 100", schema: 100, parentSchema: schema11.properties.target.properties.missing, data: data16 };
              if (vErrors === null) {
                vErrors = [err38];
              } else {
                vErrors.push(err38);
              }
              errors++;
            }
            if (data16 < 0 || isNaN(data16)) {
              const err39 = { instancePath: instancePath + "/target/missing", schemaPath: "#/properties/target/properties/missing/minimum", keyword: "minimum", params: { comparison: ">=", limit: 0 }, message: "must be >= 0", schema: 0, parentSchema: schema11.properties.target.properties.missing, data: data16 };
              if (vErrors === null) {
                vErrors = [err39];
              } else {
                vErrors.push(err39);
              }
              errors++;
            }
          }
        }
        if (data13.turns !== void 0) {
          let data17 = data13.turns;
          if (typeof data17 == "number" && isFinite(data17)) {
            if (data17 > 10 || isNaN(data17)) {
              const err40 = { instancePath: instancePath + "/target/turns", schemaPath: "#/properties/target/properties/turns/maximum", keyword: "maximum", params: { comparison: "<=", limit: 10 }, message: "must be <= 10", schema: 10, parentSchema: schema11.properties.target.properties.turns, data: data17 };
              if (vErrors === null) {
                vErrors = [err40];
              } else {
                vErrors.push(err40);
              }
              errors++;
            }
            if (data17 < 0 || isNaN(data17)) {
              const err41 = { instancePath: instancePath + "/target/turns", schemaPath: "#/properties/target/properties/turns/minimum", keyword: "minimum", params: { comparison: ">=", limit: 0 }, message: "must be >= 0", schema: 0, parentSchema: schema11.properties.target.properties.turns, data: data17 };
              if (vErrors === null) {
                vErrors = [err41];
              } else {
                vErrors.push(err41);
              }
              errors++;
            }
          } else {
            const err42 = { instancePath: instancePath + "/target/turns", schemaPath: "#/properties/target/properties/turns/type", keyword: "type", params: { type: "number" }, message: "must be number", schema: schema11.properties.target.properties.turns.type, parentSchema: schema11.properties.target.properties.turns, data: data17 };
            if (vErrors === null) {
              vErrors = [err42];
            } else {
              vErrors.push(err42);
            }
            errors++;
          }
        }
        if (data13.ring !== void 0) {
          let data18 = data13.ring;
          if (!(data18 === "teeth" || data18 === "magnets" || data18 === "either")) {
            const err43 = { instancePath: instancePath + "/target/ring", schemaPath: "#/properties/target/properties/ring/enum", keyword: "enum", params: { allowedValues: schema11.properties.target.properties.ring.enum }, message: "must be equal to one of the allowed values", schema: schema11.properties.target.properties.ring.enum, parentSchema: schema11.properties.target.properties.ring, data: data18 };
            if (vErrors === null) {
              vErrors = [err43];
            } else {
              vErrors.push(err43);
            }
            errors++;
          }
        }
        if (data13.on !== void 0) {
          let data19 = data13.on;
          if (!(typeof data19 == "number" && isFinite(data19)) && typeof data19 !== "string") {
            const err44 = { instancePath: instancePath + "/target/on", schemaPath: "#/properties/target/properties/on/type", keyword: "type", params: { type: schema11.properties.target.properties.on.type }, message: "must be number,string", schema: schema11.properties.target.properties.on.type, parentSchema: schema11.properties.target.properties.on, data: data19 };
            if (vErrors === null) {
              vErrors = [err44];
            } else {
              vErrors.push(err44);
            }
            errors++;
          }
          if (typeof data19 == "number" && isFinite(data19)) {
            if (data19 > 1 || isNaN(data19)) {
              const err45 = { instancePath: instancePath + "/target/on", schemaPath: "#/properties/target/properties/on/maximum", keyword: "maximum", params: { comparison: "<=", limit: 1 }, message: "must be <= 1", schema: 1, parentSchema: schema11.properties.target.properties.on, data: data19 };
              if (vErrors === null) {
                vErrors = [err45];
              } else {
                vErrors.push(err45);
              }
              errors++;
            }
            if (data19 < 0 || isNaN(data19)) {
              const err46 = { instancePath: instancePath + "/target/on", schemaPath: "#/properties/target/properties/on/minimum", keyword: "minimum", params: { comparison: ">=", limit: 0 }, message: "must be >= 0", schema: 0, parentSchema: schema11.properties.target.properties.on, data: data19 };
              if (vErrors === null) {
                vErrors = [err46];
              } else {
                vErrors.push(err46);
              }
              errors++;
            }
          }
        }
      } else {
        const err47 = { instancePath: instancePath + "/target", schemaPath: "#/properties/target/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.target.type, parentSchema: schema11.properties.target, data: data13 };
        if (vErrors === null) {
          vErrors = [err47];
        } else {
          vErrors.push(err47);
        }
        errors++;
      }
    }
    if (data.weights !== void 0) {
      let data20 = data.weights;
      if (data20 && typeof data20 == "object" && !Array.isArray(data20)) {
        for (const key7 in data20) {
          if (!(key7 === "connector" || key7 === "wire" || key7 === "sensor" || key7 === "module" || key7 === "supply" || key7 === "neighbour" || key7 === "target")) {
            const err48 = { instancePath: instancePath + "/weights", schemaPath: "#/properties/weights/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key7 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11.properties.weights, data: data20 };
            if (vErrors === null) {
              vErrors = [err48];
            } else {
              vErrors.push(err48);
            }
            errors++;
          }
        }
        if (data20.connector !== void 0) {
          let data21 = data20.connector;
          if (typeof data21 == "number" && isFinite(data21)) {
            if (data21 > 1e3 || isNaN(data21)) {
              const err49 = { instancePath: instancePath + "/weights/connector", schemaPath: "#/definitions/weight/maximum", keyword: "maximum", params: { comparison: "<=", limit: 1e3 }, message: "must be <= 1000", schema: 1e3, parentSchema: schema85, data: data21 };
              if (vErrors === null) {
                vErrors = [err49];
              } else {
                vErrors.push(err49);
              }
              errors++;
            }
            if (data21 < 0 || isNaN(data21)) {
              const err50 = { instancePath: instancePath + "/weights/connector", schemaPath: "#/definitions/weight/minimum", keyword: "minimum", params: { comparison: ">=", limit: 0 }, message: "must be >= 0", schema: 0, parentSchema: schema85, data: data21 };
              if (vErrors === null) {
                vErrors = [err50];
              } else {
                vErrors.push(err50);
              }
              errors++;
            }
          } else {
            const err51 = { instancePath: instancePath + "/weights/connector", schemaPath: "#/definitions/weight/type", keyword: "type", params: { type: "number" }, message: "must be number", schema: schema85.type, parentSchema: schema85, data: data21 };
            if (vErrors === null) {
              vErrors = [err51];
            } else {
              vErrors.push(err51);
            }
            errors++;
          }
        }
        if (data20.wire !== void 0) {
          let data22 = data20.wire;
          if (typeof data22 == "number" && isFinite(data22)) {
            if (data22 > 1e3 || isNaN(data22)) {
              const err52 = { instancePath: instancePath + "/weights/wire", schemaPath: "#/definitions/weight/maximum", keyword: "maximum", params: { comparison: "<=", limit: 1e3 }, message: "must be <= 1000", schema: 1e3, parentSchema: schema85, data: data22 };
              if (vErrors === null) {
                vErrors = [err52];
              } else {
                vErrors.push(err52);
              }
              errors++;
            }
            if (data22 < 0 || isNaN(data22)) {
              const err53 = { instancePath: instancePath + "/weights/wire", schemaPath: "#/definitions/weight/minimum", keyword: "minimum", params: { comparison: ">=", limit: 0 }, message: "must be >= 0", schema: 0, parentSchema: schema85, data: data22 };
              if (vErrors === null) {
                vErrors = [err53];
              } else {
                vErrors.push(err53);
              }
              errors++;
            }
          } else {
            const err54 = { instancePath: instancePath + "/weights/wire", schemaPath: "#/definitions/weight/type", keyword: "type", params: { type: "number" }, message: "must be number", schema: schema85.type, parentSchema: schema85, data: data22 };
            if (vErrors === null) {
              vErrors = [err54];
            } else {
              vErrors.push(err54);
            }
            errors++;
          }
        }
        if (data20.sensor !== void 0) {
          let data23 = data20.sensor;
          if (typeof data23 == "number" && isFinite(data23)) {
            if (data23 > 1e3 || isNaN(data23)) {
              const err55 = { instancePath: instancePath + "/weights/sensor", schemaPath: "#/definitions/weight/maximum", keyword: "maximum", params: { comparison: "<=", limit: 1e3 }, message: "must be <= 1000", schema: 1e3, parentSchema: schema85, data: data23 };
              if (vErrors === null) {
                vErrors = [err55];
              } else {
                vErrors.push(err55);
              }
              errors++;
            }
            if (data23 < 0 || isNaN(data23)) {
              const err56 = { instancePath: instancePath + "/weights/sensor", schemaPath: "#/definitions/weight/minimum", keyword: "minimum", params: { comparison: ">=", limit: 0 }, message: "must be >= 0", schema: 0, parentSchema: schema85, data: data23 };
              if (vErrors === null) {
                vErrors = [err56];
              } else {
                vErrors.push(err56);
              }
              errors++;
            }
          } else {
            const err57 = { instancePath: instancePath + "/weights/sensor", schemaPath: "#/definitions/weight/type", keyword: "type", params: { type: "number" }, message: "must be number", schema: schema85.type, parentSchema: schema85, data: data23 };
            if (vErrors === null) {
              vErrors = [err57];
            } else {
              vErrors.push(err57);
            }
            errors++;
          }
        }
        if (data20.module !== void 0) {
          let data24 = data20.module;
          if (typeof data24 == "number" && isFinite(data24)) {
            if (data24 > 1e3 || isNaN(data24)) {
              const err58 = { instancePath: instancePath + "/weights/module", schemaPath: "#/definitions/weight/maximum", keyword: "maximum", params: { comparison: "<=", limit: 1e3 }, message: "must be <= 1000", schema: 1e3, parentSchema: schema85, data: data24 };
              if (vErrors === null) {
                vErrors = [err58];
              } else {
                vErrors.push(err58);
              }
              errors++;
            }
            if (data24 < 0 || isNaN(data24)) {
              const err59 = { instancePath: instancePath + "/weights/module", schemaPath: "#/definitions/weight/minimum", keyword: "minimum", params: { comparison: ">=", limit: 0 }, message: "must be >= 0", schema: 0, parentSchema: schema85, data: data24 };
              if (vErrors === null) {
                vErrors = [err59];
              } else {
                vErrors.push(err59);
              }
              errors++;
            }
          } else {
            const err60 = { instancePath: instancePath + "/weights/module", schemaPath: "#/definitions/weight/type", keyword: "type", params: { type: "number" }, message: "must be number", schema: schema85.type, parentSchema: schema85, data: data24 };
            if (vErrors === null) {
              vErrors = [err60];
            } else {
              vErrors.push(err60);
            }
            errors++;
          }
        }
        if (data20.supply !== void 0) {
          let data25 = data20.supply;
          if (typeof data25 == "number" && isFinite(data25)) {
            if (data25 > 1e3 || isNaN(data25)) {
              const err61 = { instancePath: instancePath + "/weights/supply", schemaPath: "#/definitions/weight/maximum", keyword: "maximum", params: { comparison: "<=", limit: 1e3 }, message: "must be <= 1000", schema: 1e3, parentSchema: schema85, data: data25 };
              if (vErrors === null) {
                vErrors = [err61];
              } else {
                vErrors.push(err61);
              }
              errors++;
            }
            if (data25 < 0 || isNaN(data25)) {
              const err62 = { instancePath: instancePath + "/weights/supply", schemaPath: "#/definitions/weight/minimum", keyword: "minimum", params: { comparison: ">=", limit: 0 }, message: "must be >= 0", schema: 0, parentSchema: schema85, data: data25 };
              if (vErrors === null) {
                vErrors = [err62];
              } else {
                vErrors.push(err62);
              }
              errors++;
            }
          } else {
            const err63 = { instancePath: instancePath + "/weights/supply", schemaPath: "#/definitions/weight/type", keyword: "type", params: { type: "number" }, message: "must be number", schema: schema85.type, parentSchema: schema85, data: data25 };
            if (vErrors === null) {
              vErrors = [err63];
            } else {
              vErrors.push(err63);
            }
            errors++;
          }
        }
        if (data20.neighbour !== void 0) {
          let data26 = data20.neighbour;
          if (typeof data26 == "number" && isFinite(data26)) {
            if (data26 > 1e3 || isNaN(data26)) {
              const err64 = { instancePath: instancePath + "/weights/neighbour", schemaPath: "#/definitions/weight/maximum", keyword: "maximum", params: { comparison: "<=", limit: 1e3 }, message: "must be <= 1000", schema: 1e3, parentSchema: schema85, data: data26 };
              if (vErrors === null) {
                vErrors = [err64];
              } else {
                vErrors.push(err64);
              }
              errors++;
            }
            if (data26 < 0 || isNaN(data26)) {
              const err65 = { instancePath: instancePath + "/weights/neighbour", schemaPath: "#/definitions/weight/minimum", keyword: "minimum", params: { comparison: ">=", limit: 0 }, message: "must be >= 0", schema: 0, parentSchema: schema85, data: data26 };
              if (vErrors === null) {
                vErrors = [err65];
              } else {
                vErrors.push(err65);
              }
              errors++;
            }
          } else {
            const err66 = { instancePath: instancePath + "/weights/neighbour", schemaPath: "#/definitions/weight/type", keyword: "type", params: { type: "number" }, message: "must be number", schema: schema85.type, parentSchema: schema85, data: data26 };
            if (vErrors === null) {
              vErrors = [err66];
            } else {
              vErrors.push(err66);
            }
            errors++;
          }
        }
        if (data20.target !== void 0) {
          let data27 = data20.target;
          if (typeof data27 == "number" && isFinite(data27)) {
            if (data27 > 1e3 || isNaN(data27)) {
              const err67 = { instancePath: instancePath + "/weights/target", schemaPath: "#/definitions/weight/maximum", keyword: "maximum", params: { comparison: "<=", limit: 1e3 }, message: "must be <= 1000", schema: 1e3, parentSchema: schema85, data: data27 };
              if (vErrors === null) {
                vErrors = [err67];
              } else {
                vErrors.push(err67);
              }
              errors++;
            }
            if (data27 < 0 || isNaN(data27)) {
              const err68 = { instancePath: instancePath + "/weights/target", schemaPath: "#/definitions/weight/minimum", keyword: "minimum", params: { comparison: ">=", limit: 0 }, message: "must be >= 0", schema: 0, parentSchema: schema85, data: data27 };
              if (vErrors === null) {
                vErrors = [err68];
              } else {
                vErrors.push(err68);
              }
              errors++;
            }
          } else {
            const err69 = { instancePath: instancePath + "/weights/target", schemaPath: "#/definitions/weight/type", keyword: "type", params: { type: "number" }, message: "must be number", schema: schema85.type, parentSchema: schema85, data: data27 };
            if (vErrors === null) {
              vErrors = [err69];
            } else {
              vErrors.push(err69);
            }
            errors++;
          }
        }
      } else {
        const err70 = { instancePath: instancePath + "/weights", schemaPath: "#/properties/weights/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.weights.type, parentSchema: schema11.properties.weights, data: data20 };
        if (vErrors === null) {
          vErrors = [err70];
        } else {
          vErrors.push(err70);
        }
        errors++;
      }
    }
    if (data.faults !== void 0) {
      let data28 = data.faults;
      if (data28 && typeof data28 == "object" && !Array.isArray(data28)) {
        for (const key8 in data28) {
          if (!validate35(data28[key8], { instancePath: instancePath + "/faults/" + key8.replace(/~/g, "~0").replace(/\//g, "~1"), parentData: data28, parentDataProperty: key8, rootData })) {
            vErrors = vErrors === null ? validate35.errors : vErrors.concat(validate35.errors);
            errors = vErrors.length;
          }
        }
      } else {
        const err71 = { instancePath: instancePath + "/faults", schemaPath: "#/properties/faults/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.faults.type, parentSchema: schema11.properties.faults, data: data28 };
        if (vErrors === null) {
          vErrors = [err71];
        } else {
          vErrors.push(err71);
        }
        errors++;
      }
    }
  } else {
    const err72 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.type, parentSchema: schema11, data };
    if (vErrors === null) {
      vErrors = [err72];
    } else {
      vErrors.push(err72);
    }
    errors++;
  }
  validate10.errors = vErrors;
  return errors === 0;
}
export {
  stdin_default as default,
  validate
};
