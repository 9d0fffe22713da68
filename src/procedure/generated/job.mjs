// Made from docs/schema/job.schema.json by scripts/schemas.mjs. Change the schema, not this file.
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

// node_modules/fast-deep-equal/index.js
var require_fast_deep_equal = __commonJS({
  "node_modules/fast-deep-equal/index.js"(exports, module) {
    "use strict";
    module.exports = function equal(a, b) {
      if (a === b) return true;
      if (a && b && typeof a == "object" && typeof b == "object") {
        if (a.constructor !== b.constructor) return false;
        var length, i, keys;
        if (Array.isArray(a)) {
          length = a.length;
          if (length != b.length) return false;
          for (i = length; i-- !== 0; )
            if (!equal(a[i], b[i])) return false;
          return true;
        }
        if (a.constructor === RegExp) return a.source === b.source && a.flags === b.flags;
        if (a.valueOf !== Object.prototype.valueOf) return a.valueOf() === b.valueOf();
        if (a.toString !== Object.prototype.toString) return a.toString() === b.toString();
        keys = Object.keys(a);
        length = keys.length;
        if (length !== Object.keys(b).length) return false;
        for (i = length; i-- !== 0; )
          if (!Object.prototype.hasOwnProperty.call(b, keys[i])) return false;
        for (i = length; i-- !== 0; ) {
          var key = keys[i];
          if (!equal(a[key], b[key])) return false;
        }
        return true;
      }
      return a !== a && b !== b;
    };
  }
});

// node_modules/ajv/dist/runtime/equal.js
var require_equal = __commonJS({
  "node_modules/ajv/dist/runtime/equal.js"(exports) {
    "use strict";
    Object.defineProperty(exports, "__esModule", { value: true });
    var equal = require_fast_deep_equal();
    equal.code = 'require("ajv/dist/runtime/equal").default';
    exports.default = equal;
  }
});

// <stdin>
var validate = validate10;
var stdin_default = validate10;
var schema11 = { "$schema": "http://json-schema.org/draft-07/schema#", "$id": "job.schema.json", "title": "Job", "description": "One vehicle with one complaint. Everything but the complaint may be left out.", "type": "object", "required": ["complaint"], "additionalProperties": false, "properties": { "job": { "title": "Name", "description": "Short name in small letters; the file is named after it.", "type": "string", "pattern": "^[a-z][a-z0-9-]{0,60}$", "examples": ["blue-van"] }, "complaint": { "title": "Complaint", "description": "What the customer says, and when it happens.", "type": "string", "minLength": 1, "maxLength": 2e3 }, "procedure": { "title": "Procedure", "description": "The procedure to begin with.", "type": "string", "pattern": "^[a-z][a-z0-9-]{0,60}$" }, "codes": { "title": "Trouble codes", "description": "Codes that were read from the vehicle, each with how the module keeps it where that is known: stored, pending or history.", "type": "array", "maxItems": 60, "items": { "type": "string", "pattern": "^[PCBU][0-3][0-9A-F]{3}( (stored|pending|history))?$", "examples": ["P0335", "P0369 pending"] } }, "position": { "title": "Position of the sensor", "description": "Which sensor it is, where the codes do not say it: a shaft, with its bank where there are several, or a wheel. Every sentence then names it.", "type": "string", "pattern": "^(crankshaft|((intake|exhaust) )?camshaft( bank [1-4])?|(left|right) (front|rear) wheel)$", "examples": ["exhaust camshaft bank 2", "right rear wheel"] }, "stands": { "title": "Where the edges are", "description": "What the maker states of the signal's edges in the turn of the other one (camshaft in the crankshaft's), counted from the tooth behind its gap. A capture with both is judged by it.", "type": "string", "maxLength": 400, "pattern": "^(falls|rises)( at)? \\d{1,3}(\\.\\d+)?( ?(deg|degrees|\xB0))?(, ?(falls|rises)( at)? \\d{1,3}(\\.\\d+)?( ?(deg|degrees|\xB0))?)*(; ?within \\d{1,2}(\\.\\d+)?( ?(deg|degrees|\xB0))?)?$", "examples": ["falls at 114 deg, rises at 294 deg; within 4 deg"] }, "vehicle": { "title": "Vehicle", "description": "What is known of the vehicle.", "type": "object", "additionalProperties": false, "properties": { "words": { "title": "In words", "description": "What anyone would call it.", "type": "string", "maxLength": 200 }, "vin": { "title": "Vehicle identification number", "description": "Seventeen letters and digits; its check digit is checked.", "type": "string", "maxLength": 20 }, "plate": { "title": "Plate", "description": "Number plate.", "type": "string", "maxLength": 20 }, "odometer": { "title": "Odometer", "description": "As shown on the dial, with its unit.", "type": "string", "maxLength": 30 }, "drive": { "title": "Drive", "description": "Hybrid and electric vehicles bring their own cautions. Left out it is not-stated, and a caution asks for it.", "enum": ["combustion", "hybrid", "electric", "not-stated"] } } }, "order": { "title": "Order number", "description": "The shop's own number for this job.", "type": "string", "maxLength": 60 }, "customer": { "title": "Customer", "description": "As the shop calls the customer.", "type": "string", "maxLength": 200 }, "earlier-repairs": { "title": "Earlier repairs", "description": "Work done before this job.", "type": "array", "maxItems": 40, "items": { "type": "object", "required": ["words"], "additionalProperties": false, "properties": { "words": { "title": "In words", "description": "What was done.", "type": "string", "minLength": 1, "maxLength": 300 }, "part": { "title": "Part replaced", "description": "Its name in the circuit.", "type": "string", "pattern": "^[a-z][a-z0-9.-]{0,80}$", "examples": ["sensor"] }, "fitted": { "title": "What was fitted", "description": "A new one by the maker's number, one from another vehicle, or one of another make.", "enum": ["new", "second-hand", "other-make"] }, "changed": { "title": "What it changed", "description": "Of the complaint: nothing, only for a while, or it was cured then.", "enum": ["nothing", "for-a-while", "cured"] } } } }, "circumstances": { "title": "Before anything is touched", "description": "What was told and seen. Each may be left out; each moves chances by the weights in docs/maths.md, but for the freeze frame.", "type": "object", "additionalProperties": false, "properties": { "happens": { "title": "When it happens", "description": "Always, or when cold, hot, wet, over bumps, while cranking.", "type": "array", "maxItems": 6, "uniqueItems": true, "items": { "enum": ["always", "cold", "hot", "wet", "bumps", "cranking"] } }, "fails-with-it": { "title": "What else fails", "description": "In words; nothing where all else works.", "type": "string", "minLength": 1, "maxLength": 300, "examples": ["nothing", "wheel speed sensor, same feed"] }, "recent-work": { "title": "Recent work", "description": "On the vehicle, before the complaint began.", "type": "string", "minLength": 1, "maxLength": 300, "examples": ["timing belt", "front wheel bearing, left"] }, "seen": { "title": "Visible damage", "description": "Without touching anything.", "type": "string", "minLength": 1, "maxLength": 300, "examples": ["harness chafed at the bracket"] }, "freeze-frame": { "title": "Freeze frame", "description": "What the module kept of the moment, line by line.", "type": "array", "maxItems": 40, "items": { "type": "string", "minLength": 1, "maxLength": 200, "examples": ["812 rpm", "coolant 91 C"] } } } }, "terminals": { "title": "Pins and wire colours", "description": "By terminal of the circuit.", "type": "object", "additionalProperties": { "type": "object", "additionalProperties": false, "properties": { "pin": { "title": "Pin", "description": "Number or letter of the pin.", "type": ["string", "integer"], "maxLength": 20 }, "colour": { "title": "Wire colour", "description": "Letters of IEC 60757, base colour first: RD/BU.", "type": "string", "maxLength": 12, "examples": ["RD/BU", "BN"] } } } }, "known": { "title": "What is known about this car", "description": "Values of the circuit from a label or the maker's documents, or measured. Each may be left out; what is known narrows the rest.", "type": "array", "maxItems": 60, "items": { "type": "object", "required": ["what", "is", "from"], "additionalProperties": false, "properties": { "what": { "title": "What", "description": "In the words of the circuit or by its key.", "type": "string", "minLength": 1, "maxLength": 200, "examples": ["battery at rest", "module.reference.volts"] }, "is": { "title": "Is", "description": "A value as in a circuit file, without a tolerance within 2 %; or what a module's pin leads to.", "type": "string", "minLength": 1, "maxLength": 400, "examples": ["8 V +/- 3 %", "4.7 kohm", "battery"] }, "from": { "title": "From", "description": "maker, measured, label or other; then words of one's own.", "type": "string", "minLength": 1, "maxLength": 300, "examples": ["measured", "label: on the module"] } } } }, "harness": { "title": "Harness of this car", "description": "Connectors and splices that the sensor's wires pass through, from the sensor's connector outward, and what is known about the wires. Each connector is a place to measure at, and each side of it is a suspect of its own.", "type": "array", "maxItems": 24, "items": { "type": "object", "additionalProperties": false, "properties": { "connector": { "title": "Connector", "description": "Where a connector within the harness is.", "type": "string", "minLength": 1, "maxLength": 60, "examples": ["at the bulkhead"] }, "splice": { "title": "Splice", "description": "Where a splice of one wire is.", "type": "string", "minLength": 1, "maxLength": 60, "examples": ["under the tape"] }, "wire": { "title": "Wire", "description": "Name of a wire in the circuit, to say its length or size.", "type": "string", "minLength": 1, "maxLength": 60, "examples": ["signal"] }, "wires": { "title": "Wires that pass", "description": "Names of wires of the circuit that end at the sensor; of a splice one.", "type": "array", "minItems": 1, "maxItems": 24, "items": { "type": "string", "minLength": 1, "maxLength": 60 } }, "at": { "title": "At", "description": "Distance along the harness from the sensor's connector.", "type": "string", "minLength": 1, "maxLength": 40, "examples": ["1.2 m"] }, "minutes": { "title": "Minutes", "description": "To get at it the first time.", "type": "number", "minimum": 0, "maximum": 240 }, "length": { "title": "Length", "description": "Of the wire from end to end.", "type": "string", "minLength": 1, "maxLength": 40, "examples": ["3 m"] }, "size": { "title": "Size", "description": "Cross-section of the wire.", "type": "string", "minLength": 1, "maxLength": 40, "examples": ["0.5 mm2", "20 AWG"] } } } }, "shares": { "title": "What shares with the sensor", "description": "Each neighbour on this car that has the sensor's feed, reference, ground or connector too, by its name. An empty list says that nothing shares them. It moves chances by the weights in docs/maths.md, gives the circuit what can drag the feed down, and is never evidence for a proof.", "type": "array", "maxItems": 12, "items": { "type": "object", "required": ["name", "shares"], "additionalProperties": false, "properties": { "name": { "title": "Name", "description": "What it is called.", "type": "string", "minLength": 1, "maxLength": 60, "examples": ["oil pressure sensor"] }, "shares": { "title": "Shares", "description": "What both have: a feed or reference, a ground, or a connector other than the sensor's own.", "type": "array", "minItems": 1, "maxItems": 4, "uniqueItems": true, "items": { "enum": ["feed", "reference", "ground", "plug"] } }, "works": { "title": "Works", "description": "Whether it does; left out or not-known where nobody knows.", "enum": ["works", "fails", "not-known"] }, "how": { "title": "How it is known", "description": "In words.", "type": "string", "minLength": 1, "maxLength": 200, "examples": ["its value moves in the live data"] }, "sister": { "title": "Open level of a sister", "description": "Only for one of the same kind on the same module: the level on its own signal with its connector off, key on.", "type": "string", "minLength": 1, "maxLength": 40, "examples": ["4.98 V"] } } } }, "simulated-fault": { "title": "Fault of the simulated vehicle", "description": "What the vehicle of this job has when it is simulated: a fault of the procedure's circuit, or healthy.", "type": "string", "pattern": "^[a-z][a-z0-9.-]{0,80}$", "examples": ["wire.signal.open"] }, "intermittent": { "title": "Intermittent", "description": "The simulated vehicle reads like a healthy one until its harness is moved or its sensor warmed.", "type": "boolean", "default": false }, "notes": { "title": "Notes", "description": "Anything else that the next person should know.", "type": "string", "maxLength": 4e3 } } };
var func2 = Object.prototype.hasOwnProperty;
var func3 = require_ucs2length().default;
var func0 = require_equal().default;
var pattern0 = new RegExp("^[a-z][a-z0-9-]{0,60}$", "u");
var pattern2 = new RegExp("^[PCBU][0-3][0-9A-F]{3}( (stored|pending|history))?$", "u");
var pattern3 = new RegExp("^(crankshaft|((intake|exhaust) )?camshaft( bank [1-4])?|(left|right) (front|rear) wheel)$", "u");
var pattern4 = new RegExp("^(falls|rises)( at)? \\d{1,3}(\\.\\d+)?( ?(deg|degrees|\xB0))?(, ?(falls|rises)( at)? \\d{1,3}(\\.\\d+)?( ?(deg|degrees|\xB0))?)*(; ?within \\d{1,2}(\\.\\d+)?( ?(deg|degrees|\xB0))?)?$", "u");
var pattern5 = new RegExp("^[a-z][a-z0-9.-]{0,80}$", "u");
function validate10(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  ;
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.complaint === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "complaint" }, message: "must have required property 'complaint'", schema: schema11.required, parentSchema: schema11, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!func2.call(schema11.properties, key0)) {
        const err1 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11, data };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.job !== void 0) {
      let data0 = data.job;
      if (typeof data0 === "string") {
        if (!pattern0.test(data0)) {
          const err2 = { instancePath: instancePath + "/job", schemaPath: "#/properties/job/pattern", keyword: "pattern", params: { pattern: "^[a-z][a-z0-9-]{0,60}$" }, message: 'must match pattern "^[a-z][a-z0-9-]{0,60}$"', schema: "^[a-z][a-z0-9-]{0,60}$", parentSchema: schema11.properties.job, data: data0 };
          if (vErrors === null) {
            vErrors = [err2];
          } else {
            vErrors.push(err2);
          }
          errors++;
        }
      } else {
        const err3 = { instancePath: instancePath + "/job", schemaPath: "#/properties/job/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.job.type, parentSchema: schema11.properties.job, data: data0 };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data.complaint !== void 0) {
      let data1 = data.complaint;
      if (typeof data1 === "string") {
        if (func3(data1) > 2e3) {
          const err4 = { instancePath: instancePath + "/complaint", schemaPath: "#/properties/complaint/maxLength", keyword: "maxLength", params: { limit: 2e3 }, message: "must NOT have more than 2000 characters", schema: 2e3, parentSchema: schema11.properties.complaint, data: data1 };
          if (vErrors === null) {
            vErrors = [err4];
          } else {
            vErrors.push(err4);
          }
          errors++;
        }
        if (func3(data1) < 1) {
          const err5 = { instancePath: instancePath + "/complaint", schemaPath: "#/properties/complaint/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.complaint, data: data1 };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
      } else {
        const err6 = { instancePath: instancePath + "/complaint", schemaPath: "#/properties/complaint/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.complaint.type, parentSchema: schema11.properties.complaint, data: data1 };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data.procedure !== void 0) {
      let data2 = data.procedure;
      if (typeof data2 === "string") {
        if (!pattern0.test(data2)) {
          const err7 = { instancePath: instancePath + "/procedure", schemaPath: "#/properties/procedure/pattern", keyword: "pattern", params: { pattern: "^[a-z][a-z0-9-]{0,60}$" }, message: 'must match pattern "^[a-z][a-z0-9-]{0,60}$"', schema: "^[a-z][a-z0-9-]{0,60}$", parentSchema: schema11.properties.procedure, data: data2 };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
      } else {
        const err8 = { instancePath: instancePath + "/procedure", schemaPath: "#/properties/procedure/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.procedure.type, parentSchema: schema11.properties.procedure, data: data2 };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
    }
    if (data.codes !== void 0) {
      let data3 = data.codes;
      if (Array.isArray(data3)) {
        if (data3.length > 60) {
          const err9 = { instancePath: instancePath + "/codes", schemaPath: "#/properties/codes/maxItems", keyword: "maxItems", params: { limit: 60 }, message: "must NOT have more than 60 items", schema: 60, parentSchema: schema11.properties.codes, data: data3 };
          if (vErrors === null) {
            vErrors = [err9];
          } else {
            vErrors.push(err9);
          }
          errors++;
        }
        const len0 = data3.length;
        for (let i0 = 0; i0 < len0; i0++) {
          let data4 = data3[i0];
          if (typeof data4 === "string") {
            if (!pattern2.test(data4)) {
              const err10 = { instancePath: instancePath + "/codes/" + i0, schemaPath: "#/properties/codes/items/pattern", keyword: "pattern", params: { pattern: "^[PCBU][0-3][0-9A-F]{3}( (stored|pending|history))?$" }, message: 'must match pattern "^[PCBU][0-3][0-9A-F]{3}( (stored|pending|history))?$"', schema: "^[PCBU][0-3][0-9A-F]{3}( (stored|pending|history))?$", parentSchema: schema11.properties.codes.items, data: data4 };
              if (vErrors === null) {
                vErrors = [err10];
              } else {
                vErrors.push(err10);
              }
              errors++;
            }
          } else {
            const err11 = { instancePath: instancePath + "/codes/" + i0, schemaPath: "#/properties/codes/items/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.codes.items.type, parentSchema: schema11.properties.codes.items, data: data4 };
            if (vErrors === null) {
              vErrors = [err11];
            } else {
              vErrors.push(err11);
            }
            errors++;
          }
        }
      } else {
        const err12 = { instancePath: instancePath + "/codes", schemaPath: "#/properties/codes/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema11.properties.codes.type, parentSchema: schema11.properties.codes, data: data3 };
        if (vErrors === null) {
          vErrors = [err12];
        } else {
          vErrors.push(err12);
        }
        errors++;
      }
    }
    if (data.position !== void 0) {
      let data5 = data.position;
      if (typeof data5 === "string") {
        if (!pattern3.test(data5)) {
          const err13 = { instancePath: instancePath + "/position", schemaPath: "#/properties/position/pattern", keyword: "pattern", params: { pattern: "^(crankshaft|((intake|exhaust) )?camshaft( bank [1-4])?|(left|right) (front|rear) wheel)$" }, message: 'must match pattern "^(crankshaft|((intake|exhaust) )?camshaft( bank [1-4])?|(left|right) (front|rear) wheel)$"', schema: "^(crankshaft|((intake|exhaust) )?camshaft( bank [1-4])?|(left|right) (front|rear) wheel)$", parentSchema: schema11.properties.position, data: data5 };
          if (vErrors === null) {
            vErrors = [err13];
          } else {
            vErrors.push(err13);
          }
          errors++;
        }
      } else {
        const err14 = { instancePath: instancePath + "/position", schemaPath: "#/properties/position/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.position.type, parentSchema: schema11.properties.position, data: data5 };
        if (vErrors === null) {
          vErrors = [err14];
        } else {
          vErrors.push(err14);
        }
        errors++;
      }
    }
    if (data.stands !== void 0) {
      let data6 = data.stands;
      if (typeof data6 === "string") {
        if (func3(data6) > 400) {
          const err15 = { instancePath: instancePath + "/stands", schemaPath: "#/properties/stands/maxLength", keyword: "maxLength", params: { limit: 400 }, message: "must NOT have more than 400 characters", schema: 400, parentSchema: schema11.properties.stands, data: data6 };
          if (vErrors === null) {
            vErrors = [err15];
          } else {
            vErrors.push(err15);
          }
          errors++;
        }
        if (!pattern4.test(data6)) {
          const err16 = { instancePath: instancePath + "/stands", schemaPath: "#/properties/stands/pattern", keyword: "pattern", params: { pattern: "^(falls|rises)( at)? \\d{1,3}(\\.\\d+)?( ?(deg|degrees|\xB0))?(, ?(falls|rises)( at)? \\d{1,3}(\\.\\d+)?( ?(deg|degrees|\xB0))?)*(; ?within \\d{1,2}(\\.\\d+)?( ?(deg|degrees|\xB0))?)?$" }, message: 'must match pattern "^(falls|rises)( at)? \\d{1,3}(\\.\\d+)?( ?(deg|degrees|\xB0))?(, ?(falls|rises)( at)? \\d{1,3}(\\.\\d+)?( ?(deg|degrees|\xB0))?)*(; ?within \\d{1,2}(\\.\\d+)?( ?(deg|degrees|\xB0))?)?$"', schema: "^(falls|rises)( at)? \\d{1,3}(\\.\\d+)?( ?(deg|degrees|\xB0))?(, ?(falls|rises)( at)? \\d{1,3}(\\.\\d+)?( ?(deg|degrees|\xB0))?)*(; ?within \\d{1,2}(\\.\\d+)?( ?(deg|degrees|\xB0))?)?$", parentSchema: schema11.properties.stands, data: data6 };
          if (vErrors === null) {
            vErrors = [err16];
          } else {
            vErrors.push(err16);
          }
          errors++;
        }
      } else {
        const err17 = { instancePath: instancePath + "/stands", schemaPath: "#/properties/stands/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.stands.type, parentSchema: schema11.properties.stands, data: data6 };
        if (vErrors === null) {
          vErrors = [err17];
        } else {
          vErrors.push(err17);
        }
        errors++;
      }
    }
    if (data.vehicle !== void 0) {
      let data7 = data.vehicle;
      if (data7 && typeof data7 == "object" && !Array.isArray(data7)) {
        for (const key1 in data7) {
          if (!(key1 === "words" || key1 === "vin" || key1 === "plate" || key1 === "odometer" || key1 === "drive")) {
            const err18 = { instancePath: instancePath + "/vehicle", schemaPath: "#/properties/vehicle/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key1 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11.properties.vehicle, data: data7 };
            if (vErrors === null) {
              vErrors = [err18];
            } else {
              vErrors.push(err18);
            }
            errors++;
          }
        }
        if (data7.words !== void 0) {
          let data8 = data7.words;
          if (typeof data8 === "string") {
            if (func3(data8) > 200) {
              const err19 = { instancePath: instancePath + "/vehicle/words", schemaPath: "#/properties/vehicle/properties/words/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema11.properties.vehicle.properties.words, data: data8 };
              if (vErrors === null) {
                vErrors = [err19];
              } else {
                vErrors.push(err19);
              }
              errors++;
            }
          } else {
            const err20 = { instancePath: instancePath + "/vehicle/words", schemaPath: "#/properties/vehicle/properties/words/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.vehicle.properties.words.type, parentSchema: schema11.properties.vehicle.properties.words, data: data8 };
            if (vErrors === null) {
              vErrors = [err20];
            } else {
              vErrors.push(err20);
            }
            errors++;
          }
        }
        if (data7.vin !== void 0) {
          let data9 = data7.vin;
          if (typeof data9 === "string") {
            if (func3(data9) > 20) {
              const err21 = { instancePath: instancePath + "/vehicle/vin", schemaPath: "#/properties/vehicle/properties/vin/maxLength", keyword: "maxLength", params: { limit: 20 }, message: "must NOT have more than 20 characters", schema: 20, parentSchema: schema11.properties.vehicle.properties.vin, data: data9 };
              if (vErrors === null) {
                vErrors = [err21];
              } else {
                vErrors.push(err21);
              }
              errors++;
            }
          } else {
            const err22 = { instancePath: instancePath + "/vehicle/vin", schemaPath: "#/properties/vehicle/properties/vin/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.vehicle.properties.vin.type, parentSchema: schema11.properties.vehicle.properties.vin, data: data9 };
            if (vErrors === null) {
              vErrors = [err22];
            } else {
              vErrors.push(err22);
            }
            errors++;
          }
        }
        if (data7.plate !== void 0) {
          let data10 = data7.plate;
          if (typeof data10 === "string") {
            if (func3(data10) > 20) {
              const err23 = { instancePath: instancePath + "/vehicle/plate", schemaPath: "#/properties/vehicle/properties/plate/maxLength", keyword: "maxLength", params: { limit: 20 }, message: "must NOT have more than 20 characters", schema: 20, parentSchema: schema11.properties.vehicle.properties.plate, data: data10 };
              if (vErrors === null) {
                vErrors = [err23];
              } else {
                vErrors.push(err23);
              }
              errors++;
            }
          } else {
            const err24 = { instancePath: instancePath + "/vehicle/plate", schemaPath: "#/properties/vehicle/properties/plate/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.vehicle.properties.plate.type, parentSchema: schema11.properties.vehicle.properties.plate, data: data10 };
            if (vErrors === null) {
              vErrors = [err24];
            } else {
              vErrors.push(err24);
            }
            errors++;
          }
        }
        if (data7.odometer !== void 0) {
          let data11 = data7.odometer;
          if (typeof data11 === "string") {
            if (func3(data11) > 30) {
              const err25 = { instancePath: instancePath + "/vehicle/odometer", schemaPath: "#/properties/vehicle/properties/odometer/maxLength", keyword: "maxLength", params: { limit: 30 }, message: "must NOT have more than 30 characters", schema: 30, parentSchema: schema11.properties.vehicle.properties.odometer, data: data11 };
              if (vErrors === null) {
                vErrors = [err25];
              } else {
                vErrors.push(err25);
              }
              errors++;
            }
          } else {
            const err26 = { instancePath: instancePath + "/vehicle/odometer", schemaPath: "#/properties/vehicle/properties/odometer/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.vehicle.properties.odometer.type, parentSchema: schema11.properties.vehicle.properties.odometer, data: data11 };
            if (vErrors === null) {
              vErrors = [err26];
            } else {
              vErrors.push(err26);
            }
            errors++;
          }
        }
        if (data7.drive !== void 0) {
          let data12 = data7.drive;
          if (!(data12 === "combustion" || data12 === "hybrid" || data12 === "electric" || data12 === "not-stated")) {
            const err27 = { instancePath: instancePath + "/vehicle/drive", schemaPath: "#/properties/vehicle/properties/drive/enum", keyword: "enum", params: { allowedValues: schema11.properties.vehicle.properties.drive.enum }, message: "must be equal to one of the allowed values", schema: schema11.properties.vehicle.properties.drive.enum, parentSchema: schema11.properties.vehicle.properties.drive, data: data12 };
            if (vErrors === null) {
              vErrors = [err27];
            } else {
              vErrors.push(err27);
            }
            errors++;
          }
        }
      } else {
        const err28 = { instancePath: instancePath + "/vehicle", schemaPath: "#/properties/vehicle/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.vehicle.type, parentSchema: schema11.properties.vehicle, data: data7 };
        if (vErrors === null) {
          vErrors = [err28];
        } else {
          vErrors.push(err28);
        }
        errors++;
      }
    }
    if (data.order !== void 0) {
      let data13 = data.order;
      if (typeof data13 === "string") {
        if (func3(data13) > 60) {
          const err29 = { instancePath: instancePath + "/order", schemaPath: "#/properties/order/maxLength", keyword: "maxLength", params: { limit: 60 }, message: "must NOT have more than 60 characters", schema: 60, parentSchema: schema11.properties.order, data: data13 };
          if (vErrors === null) {
            vErrors = [err29];
          } else {
            vErrors.push(err29);
          }
          errors++;
        }
      } else {
        const err30 = { instancePath: instancePath + "/order", schemaPath: "#/properties/order/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.order.type, parentSchema: schema11.properties.order, data: data13 };
        if (vErrors === null) {
          vErrors = [err30];
        } else {
          vErrors.push(err30);
        }
        errors++;
      }
    }
    if (data.customer !== void 0) {
      let data14 = data.customer;
      if (typeof data14 === "string") {
        if (func3(data14) > 200) {
          const err31 = { instancePath: instancePath + "/customer", schemaPath: "#/properties/customer/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema11.properties.customer, data: data14 };
          if (vErrors === null) {
            vErrors = [err31];
          } else {
            vErrors.push(err31);
          }
          errors++;
        }
      } else {
        const err32 = { instancePath: instancePath + "/customer", schemaPath: "#/properties/customer/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.customer.type, parentSchema: schema11.properties.customer, data: data14 };
        if (vErrors === null) {
          vErrors = [err32];
        } else {
          vErrors.push(err32);
        }
        errors++;
      }
    }
    if (data["earlier-repairs"] !== void 0) {
      let data15 = data["earlier-repairs"];
      if (Array.isArray(data15)) {
        if (data15.length > 40) {
          const err33 = { instancePath: instancePath + "/earlier-repairs", schemaPath: "#/properties/earlier-repairs/maxItems", keyword: "maxItems", params: { limit: 40 }, message: "must NOT have more than 40 items", schema: 40, parentSchema: schema11.properties["earlier-repairs"], data: data15 };
          if (vErrors === null) {
            vErrors = [err33];
          } else {
            vErrors.push(err33);
          }
          errors++;
        }
        const len1 = data15.length;
        for (let i1 = 0; i1 < len1; i1++) {
          let data16 = data15[i1];
          if (data16 && typeof data16 == "object" && !Array.isArray(data16)) {
            if (data16.words === void 0) {
              const err34 = { instancePath: instancePath + "/earlier-repairs/" + i1, schemaPath: "#/properties/earlier-repairs/items/required", keyword: "required", params: { missingProperty: "words" }, message: "must have required property 'words'", schema: schema11.properties["earlier-repairs"].items.required, parentSchema: schema11.properties["earlier-repairs"].items, data: data16 };
              if (vErrors === null) {
                vErrors = [err34];
              } else {
                vErrors.push(err34);
              }
              errors++;
            }
            for (const key2 in data16) {
              if (!(key2 === "words" || key2 === "part" || key2 === "fitted" || key2 === "changed")) {
                const err35 = { instancePath: instancePath + "/earlier-repairs/" + i1, schemaPath: "#/properties/earlier-repairs/items/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key2 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11.properties["earlier-repairs"].items, data: data16 };
                if (vErrors === null) {
                  vErrors = [err35];
                } else {
                  vErrors.push(err35);
                }
                errors++;
              }
            }
            if (data16.words !== void 0) {
              let data17 = data16.words;
              if (typeof data17 === "string") {
                if (func3(data17) > 300) {
                  const err36 = { instancePath: instancePath + "/earlier-repairs/" + i1 + "/words", schemaPath: "#/properties/earlier-repairs/items/properties/words/maxLength", keyword: "maxLength", params: { limit: 300 }, message: "must NOT have more than 300 characters", schema: 300, parentSchema: schema11.properties["earlier-repairs"].items.properties.words, data: data17 };
                  if (vErrors === null) {
                    vErrors = [err36];
                  } else {
                    vErrors.push(err36);
                  }
                  errors++;
                }
                if (func3(data17) < 1) {
                  const err37 = { instancePath: instancePath + "/earlier-repairs/" + i1 + "/words", schemaPath: "#/properties/earlier-repairs/items/properties/words/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties["earlier-repairs"].items.properties.words, data: data17 };
                  if (vErrors === null) {
                    vErrors = [err37];
                  } else {
                    vErrors.push(err37);
                  }
                  errors++;
                }
              } else {
                const err38 = { instancePath: instancePath + "/earlier-repairs/" + i1 + "/words", schemaPath: "#/properties/earlier-repairs/items/properties/words/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties["earlier-repairs"].items.properties.words.type, parentSchema: schema11.properties["earlier-repairs"].items.properties.words, data: data17 };
                if (vErrors === null) {
                  vErrors = [err38];
                } else {
                  vErrors.push(err38);
                }
                errors++;
              }
            }
            if (data16.part !== void 0) {
              let data18 = data16.part;
              if (typeof data18 === "string") {
                if (!pattern5.test(data18)) {
                  const err39 = { instancePath: instancePath + "/earlier-repairs/" + i1 + "/part", schemaPath: "#/properties/earlier-repairs/items/properties/part/pattern", keyword: "pattern", params: { pattern: "^[a-z][a-z0-9.-]{0,80}$" }, message: 'must match pattern "^[a-z][a-z0-9.-]{0,80}$"', schema: "^[a-z][a-z0-9.-]{0,80}$", parentSchema: schema11.properties["earlier-repairs"].items.properties.part, data: data18 };
                  if (vErrors === null) {
                    vErrors = [err39];
                  } else {
                    vErrors.push(err39);
                  }
                  errors++;
                }
              } else {
                const err40 = { instancePath: instancePath + "/earlier-repairs/" + i1 + "/part", schemaPath: "#/properties/earlier-repairs/items/properties/part/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties["earlier-repairs"].items.properties.part.type, parentSchema: schema11.properties["earlier-repairs"].items.properties.part, data: data18 };
                if (vErrors === null) {
                  vErrors = [err40];
                } else {
                  vErrors.push(err40);
                }
                errors++;
              }
            }
            if (data16.fitted !== void 0) {
              let data19 = data16.fitted;
              if (!(data19 === "new" || data19 === "second-hand" || data19 === "other-make")) {
                const err41 = { instancePath: instancePath + "/earlier-repairs/" + i1 + "/fitted", schemaPath: "#/properties/earlier-repairs/items/properties/fitted/enum", keyword: "enum", params: { allowedValues: schema11.properties["earlier-repairs"].items.properties.fitted.enum }, message: "must be equal to one of the allowed values", schema: schema11.properties["earlier-repairs"].items.properties.fitted.enum, parentSchema: schema11.properties["earlier-repairs"].items.properties.fitted, data: data19 };
                if (vErrors === null) {
                  vErrors = [err41];
                } else {
                  vErrors.push(err41);
                }
                errors++;
              }
            }
            if (data16.changed !== void 0) {
              let data20 = data16.changed;
              if (!(data20 === "nothing" || data20 === "for-a-while" || data20 === "cured")) {
                const err42 = { instancePath: instancePath + "/earlier-repairs/" + i1 + "/changed", schemaPath: "#/properties/earlier-repairs/items/properties/changed/enum", keyword: "enum", params: { allowedValues: schema11.properties["earlier-repairs"].items.properties.changed.enum }, message: "must be equal to one of the allowed values", schema: schema11.properties["earlier-repairs"].items.properties.changed.enum, parentSchema: schema11.properties["earlier-repairs"].items.properties.changed, data: data20 };
                if (vErrors === null) {
                  vErrors = [err42];
                } else {
                  vErrors.push(err42);
                }
                errors++;
              }
            }
          } else {
            const err43 = { instancePath: instancePath + "/earlier-repairs/" + i1, schemaPath: "#/properties/earlier-repairs/items/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties["earlier-repairs"].items.type, parentSchema: schema11.properties["earlier-repairs"].items, data: data16 };
            if (vErrors === null) {
              vErrors = [err43];
            } else {
              vErrors.push(err43);
            }
            errors++;
          }
        }
      } else {
        const err44 = { instancePath: instancePath + "/earlier-repairs", schemaPath: "#/properties/earlier-repairs/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema11.properties["earlier-repairs"].type, parentSchema: schema11.properties["earlier-repairs"], data: data15 };
        if (vErrors === null) {
          vErrors = [err44];
        } else {
          vErrors.push(err44);
        }
        errors++;
      }
    }
    if (data.circumstances !== void 0) {
      let data21 = data.circumstances;
      if (data21 && typeof data21 == "object" && !Array.isArray(data21)) {
        for (const key3 in data21) {
          if (!(key3 === "happens" || key3 === "fails-with-it" || key3 === "recent-work" || key3 === "seen" || key3 === "freeze-frame")) {
            const err45 = { instancePath: instancePath + "/circumstances", schemaPath: "#/properties/circumstances/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key3 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11.properties.circumstances, data: data21 };
            if (vErrors === null) {
              vErrors = [err45];
            } else {
              vErrors.push(err45);
            }
            errors++;
          }
        }
        if (data21.happens !== void 0) {
          let data22 = data21.happens;
          if (Array.isArray(data22)) {
            if (data22.length > 6) {
              const err46 = { instancePath: instancePath + "/circumstances/happens", schemaPath: "#/properties/circumstances/properties/happens/maxItems", keyword: "maxItems", params: { limit: 6 }, message: "must NOT have more than 6 items", schema: 6, parentSchema: schema11.properties.circumstances.properties.happens, data: data22 };
              if (vErrors === null) {
                vErrors = [err46];
              } else {
                vErrors.push(err46);
              }
              errors++;
            }
            const len2 = data22.length;
            for (let i2 = 0; i2 < len2; i2++) {
              let data23 = data22[i2];
              if (!(data23 === "always" || data23 === "cold" || data23 === "hot" || data23 === "wet" || data23 === "bumps" || data23 === "cranking")) {
                const err47 = { instancePath: instancePath + "/circumstances/happens/" + i2, schemaPath: "#/properties/circumstances/properties/happens/items/enum", keyword: "enum", params: { allowedValues: schema11.properties.circumstances.properties.happens.items.enum }, message: "must be equal to one of the allowed values", schema: schema11.properties.circumstances.properties.happens.items.enum, parentSchema: schema11.properties.circumstances.properties.happens.items, data: data23 };
                if (vErrors === null) {
                  vErrors = [err47];
                } else {
                  vErrors.push(err47);
                }
                errors++;
              }
            }
            let i3 = data22.length;
            let j0;
            if (i3 > 1) {
              outer0: for (; i3--; ) {
                for (j0 = i3; j0--; ) {
                  if (func0(data22[i3], data22[j0])) {
                    const err48 = { instancePath: instancePath + "/circumstances/happens", schemaPath: "#/properties/circumstances/properties/happens/uniqueItems", keyword: "uniqueItems", params: { i: i3, j: j0 }, message: "must NOT have duplicate items (items ## " + j0 + " and " + i3 + " are identical)", schema: true, parentSchema: schema11.properties.circumstances.properties.happens, data: data22 };
                    if (vErrors === null) {
                      vErrors = [err48];
                    } else {
                      vErrors.push(err48);
                    }
                    errors++;
                    break outer0;
                  }
                }
              }
            }
          } else {
            const err49 = { instancePath: instancePath + "/circumstances/happens", schemaPath: "#/properties/circumstances/properties/happens/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema11.properties.circumstances.properties.happens.type, parentSchema: schema11.properties.circumstances.properties.happens, data: data22 };
            if (vErrors === null) {
              vErrors = [err49];
            } else {
              vErrors.push(err49);
            }
            errors++;
          }
        }
        if (data21["fails-with-it"] !== void 0) {
          let data24 = data21["fails-with-it"];
          if (typeof data24 === "string") {
            if (func3(data24) > 300) {
              const err50 = { instancePath: instancePath + "/circumstances/fails-with-it", schemaPath: "#/properties/circumstances/properties/fails-with-it/maxLength", keyword: "maxLength", params: { limit: 300 }, message: "must NOT have more than 300 characters", schema: 300, parentSchema: schema11.properties.circumstances.properties["fails-with-it"], data: data24 };
              if (vErrors === null) {
                vErrors = [err50];
              } else {
                vErrors.push(err50);
              }
              errors++;
            }
            if (func3(data24) < 1) {
              const err51 = { instancePath: instancePath + "/circumstances/fails-with-it", schemaPath: "#/properties/circumstances/properties/fails-with-it/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.circumstances.properties["fails-with-it"], data: data24 };
              if (vErrors === null) {
                vErrors = [err51];
              } else {
                vErrors.push(err51);
              }
              errors++;
            }
          } else {
            const err52 = { instancePath: instancePath + "/circumstances/fails-with-it", schemaPath: "#/properties/circumstances/properties/fails-with-it/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.circumstances.properties["fails-with-it"].type, parentSchema: schema11.properties.circumstances.properties["fails-with-it"], data: data24 };
            if (vErrors === null) {
              vErrors = [err52];
            } else {
              vErrors.push(err52);
            }
            errors++;
          }
        }
        if (data21["recent-work"] !== void 0) {
          let data25 = data21["recent-work"];
          if (typeof data25 === "string") {
            if (func3(data25) > 300) {
              const err53 = { instancePath: instancePath + "/circumstances/recent-work", schemaPath: "#/properties/circumstances/properties/recent-work/maxLength", keyword: "maxLength", params: { limit: 300 }, message: "must NOT have more than 300 characters", schema: 300, parentSchema: schema11.properties.circumstances.properties["recent-work"], data: data25 };
              if (vErrors === null) {
                vErrors = [err53];
              } else {
                vErrors.push(err53);
              }
              errors++;
            }
            if (func3(data25) < 1) {
              const err54 = { instancePath: instancePath + "/circumstances/recent-work", schemaPath: "#/properties/circumstances/properties/recent-work/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.circumstances.properties["recent-work"], data: data25 };
              if (vErrors === null) {
                vErrors = [err54];
              } else {
                vErrors.push(err54);
              }
              errors++;
            }
          } else {
            const err55 = { instancePath: instancePath + "/circumstances/recent-work", schemaPath: "#/properties/circumstances/properties/recent-work/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.circumstances.properties["recent-work"].type, parentSchema: schema11.properties.circumstances.properties["recent-work"], data: data25 };
            if (vErrors === null) {
              vErrors = [err55];
            } else {
              vErrors.push(err55);
            }
            errors++;
          }
        }
        if (data21.seen !== void 0) {
          let data26 = data21.seen;
          if (typeof data26 === "string") {
            if (func3(data26) > 300) {
              const err56 = { instancePath: instancePath + "/circumstances/seen", schemaPath: "#/properties/circumstances/properties/seen/maxLength", keyword: "maxLength", params: { limit: 300 }, message: "must NOT have more than 300 characters", schema: 300, parentSchema: schema11.properties.circumstances.properties.seen, data: data26 };
              if (vErrors === null) {
                vErrors = [err56];
              } else {
                vErrors.push(err56);
              }
              errors++;
            }
            if (func3(data26) < 1) {
              const err57 = { instancePath: instancePath + "/circumstances/seen", schemaPath: "#/properties/circumstances/properties/seen/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.circumstances.properties.seen, data: data26 };
              if (vErrors === null) {
                vErrors = [err57];
              } else {
                vErrors.push(err57);
              }
              errors++;
            }
          } else {
            const err58 = { instancePath: instancePath + "/circumstances/seen", schemaPath: "#/properties/circumstances/properties/seen/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.circumstances.properties.seen.type, parentSchema: schema11.properties.circumstances.properties.seen, data: data26 };
            if (vErrors === null) {
              vErrors = [err58];
            } else {
              vErrors.push(err58);
            }
            errors++;
          }
        }
        if (data21["freeze-frame"] !== void 0) {
          let data27 = data21["freeze-frame"];
          if (Array.isArray(data27)) {
            if (data27.length > 40) {
              const err59 = { instancePath: instancePath + "/circumstances/freeze-frame", schemaPath: "#/properties/circumstances/properties/freeze-frame/maxItems", keyword: "maxItems", params: { limit: 40 }, message: "must NOT have more than 40 items", schema: 40, parentSchema: schema11.properties.circumstances.properties["freeze-frame"], data: data27 };
              if (vErrors === null) {
                vErrors = [err59];
              } else {
                vErrors.push(err59);
              }
              errors++;
            }
            const len3 = data27.length;
            for (let i4 = 0; i4 < len3; i4++) {
              let data28 = data27[i4];
              if (typeof data28 === "string") {
                if (func3(data28) > 200) {
                  const err60 = { instancePath: instancePath + "/circumstances/freeze-frame/" + i4, schemaPath: "#/properties/circumstances/properties/freeze-frame/items/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema11.properties.circumstances.properties["freeze-frame"].items, data: data28 };
                  if (vErrors === null) {
                    vErrors = [err60];
                  } else {
                    vErrors.push(err60);
                  }
                  errors++;
                }
                if (func3(data28) < 1) {
                  const err61 = { instancePath: instancePath + "/circumstances/freeze-frame/" + i4, schemaPath: "#/properties/circumstances/properties/freeze-frame/items/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.circumstances.properties["freeze-frame"].items, data: data28 };
                  if (vErrors === null) {
                    vErrors = [err61];
                  } else {
                    vErrors.push(err61);
                  }
                  errors++;
                }
              } else {
                const err62 = { instancePath: instancePath + "/circumstances/freeze-frame/" + i4, schemaPath: "#/properties/circumstances/properties/freeze-frame/items/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.circumstances.properties["freeze-frame"].items.type, parentSchema: schema11.properties.circumstances.properties["freeze-frame"].items, data: data28 };
                if (vErrors === null) {
                  vErrors = [err62];
                } else {
                  vErrors.push(err62);
                }
                errors++;
              }
            }
          } else {
            const err63 = { instancePath: instancePath + "/circumstances/freeze-frame", schemaPath: "#/properties/circumstances/properties/freeze-frame/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema11.properties.circumstances.properties["freeze-frame"].type, parentSchema: schema11.properties.circumstances.properties["freeze-frame"], data: data27 };
            if (vErrors === null) {
              vErrors = [err63];
            } else {
              vErrors.push(err63);
            }
            errors++;
          }
        }
      } else {
        const err64 = { instancePath: instancePath + "/circumstances", schemaPath: "#/properties/circumstances/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.circumstances.type, parentSchema: schema11.properties.circumstances, data: data21 };
        if (vErrors === null) {
          vErrors = [err64];
        } else {
          vErrors.push(err64);
        }
        errors++;
      }
    }
    if (data.terminals !== void 0) {
      let data29 = data.terminals;
      if (data29 && typeof data29 == "object" && !Array.isArray(data29)) {
        for (const key4 in data29) {
          let data30 = data29[key4];
          if (data30 && typeof data30 == "object" && !Array.isArray(data30)) {
            for (const key5 in data30) {
              if (!(key5 === "pin" || key5 === "colour")) {
                const err65 = { instancePath: instancePath + "/terminals/" + key4.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/properties/terminals/additionalProperties/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key5 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11.properties.terminals.additionalProperties, data: data30 };
                if (vErrors === null) {
                  vErrors = [err65];
                } else {
                  vErrors.push(err65);
                }
                errors++;
              }
            }
            if (data30.pin !== void 0) {
              let data31 = data30.pin;
              if (typeof data31 !== "string" && !(typeof data31 == "number" && (!(data31 % 1) && !isNaN(data31)) && isFinite(data31))) {
                const err66 = { instancePath: instancePath + "/terminals/" + key4.replace(/~/g, "~0").replace(/\//g, "~1") + "/pin", schemaPath: "#/properties/terminals/additionalProperties/properties/pin/type", keyword: "type", params: { type: schema11.properties.terminals.additionalProperties.properties.pin.type }, message: "must be string,integer", schema: schema11.properties.terminals.additionalProperties.properties.pin.type, parentSchema: schema11.properties.terminals.additionalProperties.properties.pin, data: data31 };
                if (vErrors === null) {
                  vErrors = [err66];
                } else {
                  vErrors.push(err66);
                }
                errors++;
              }
              if (typeof data31 === "string") {
                if (func3(data31) > 20) {
                  const err67 = { instancePath: instancePath + "/terminals/" + key4.replace(/~/g, "~0").replace(/\//g, "~1") + "/pin", schemaPath: "#/properties/terminals/additionalProperties/properties/pin/maxLength", keyword: "maxLength", params: { limit: 20 }, message: "must NOT have more than 20 characters", schema: 20, parentSchema: schema11.properties.terminals.additionalProperties.properties.pin, data: data31 };
                  if (vErrors === null) {
                    vErrors = [err67];
                  } else {
                    vErrors.push(err67);
                  }
                  errors++;
                }
              }
            }
            if (data30.colour !== void 0) {
              let data32 = data30.colour;
              if (typeof data32 === "string") {
                if (func3(data32) > 12) {
                  const err68 = { instancePath: instancePath + "/terminals/" + key4.replace(/~/g, "~0").replace(/\//g, "~1") + "/colour", schemaPath: "#/properties/terminals/additionalProperties/properties/colour/maxLength", keyword: "maxLength", params: { limit: 12 }, message: "must NOT have more than 12 characters", schema: 12, parentSchema: schema11.properties.terminals.additionalProperties.properties.colour, data: data32 };
                  if (vErrors === null) {
                    vErrors = [err68];
                  } else {
                    vErrors.push(err68);
                  }
                  errors++;
                }
              } else {
                const err69 = { instancePath: instancePath + "/terminals/" + key4.replace(/~/g, "~0").replace(/\//g, "~1") + "/colour", schemaPath: "#/properties/terminals/additionalProperties/properties/colour/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.terminals.additionalProperties.properties.colour.type, parentSchema: schema11.properties.terminals.additionalProperties.properties.colour, data: data32 };
                if (vErrors === null) {
                  vErrors = [err69];
                } else {
                  vErrors.push(err69);
                }
                errors++;
              }
            }
          } else {
            const err70 = { instancePath: instancePath + "/terminals/" + key4.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/properties/terminals/additionalProperties/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.terminals.additionalProperties.type, parentSchema: schema11.properties.terminals.additionalProperties, data: data30 };
            if (vErrors === null) {
              vErrors = [err70];
            } else {
              vErrors.push(err70);
            }
            errors++;
          }
        }
      } else {
        const err71 = { instancePath: instancePath + "/terminals", schemaPath: "#/properties/terminals/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.terminals.type, parentSchema: schema11.properties.terminals, data: data29 };
        if (vErrors === null) {
          vErrors = [err71];
        } else {
          vErrors.push(err71);
        }
        errors++;
      }
    }
    if (data.known !== void 0) {
      let data33 = data.known;
      if (Array.isArray(data33)) {
        if (data33.length > 60) {
          const err72 = { instancePath: instancePath + "/known", schemaPath: "#/properties/known/maxItems", keyword: "maxItems", params: { limit: 60 }, message: "must NOT have more than 60 items", schema: 60, parentSchema: schema11.properties.known, data: data33 };
          if (vErrors === null) {
            vErrors = [err72];
          } else {
            vErrors.push(err72);
          }
          errors++;
        }
        const len4 = data33.length;
        for (let i5 = 0; i5 < len4; i5++) {
          let data34 = data33[i5];
          if (data34 && typeof data34 == "object" && !Array.isArray(data34)) {
            if (data34.what === void 0) {
              const err73 = { instancePath: instancePath + "/known/" + i5, schemaPath: "#/properties/known/items/required", keyword: "required", params: { missingProperty: "what" }, message: "must have required property 'what'", schema: schema11.properties.known.items.required, parentSchema: schema11.properties.known.items, data: data34 };
              if (vErrors === null) {
                vErrors = [err73];
              } else {
                vErrors.push(err73);
              }
              errors++;
            }
            if (data34.is === void 0) {
              const err74 = { instancePath: instancePath + "/known/" + i5, schemaPath: "#/properties/known/items/required", keyword: "required", params: { missingProperty: "is" }, message: "must have required property 'is'", schema: schema11.properties.known.items.required, parentSchema: schema11.properties.known.items, data: data34 };
              if (vErrors === null) {
                vErrors = [err74];
              } else {
                vErrors.push(err74);
              }
              errors++;
            }
            if (data34.from === void 0) {
              const err75 = { instancePath: instancePath + "/known/" + i5, schemaPath: "#/properties/known/items/required", keyword: "required", params: { missingProperty: "from" }, message: "must have required property 'from'", schema: schema11.properties.known.items.required, parentSchema: schema11.properties.known.items, data: data34 };
              if (vErrors === null) {
                vErrors = [err75];
              } else {
                vErrors.push(err75);
              }
              errors++;
            }
            for (const key6 in data34) {
              if (!(key6 === "what" || key6 === "is" || key6 === "from")) {
                const err76 = { instancePath: instancePath + "/known/" + i5, schemaPath: "#/properties/known/items/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key6 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11.properties.known.items, data: data34 };
                if (vErrors === null) {
                  vErrors = [err76];
                } else {
                  vErrors.push(err76);
                }
                errors++;
              }
            }
            if (data34.what !== void 0) {
              let data35 = data34.what;
              if (typeof data35 === "string") {
                if (func3(data35) > 200) {
                  const err77 = { instancePath: instancePath + "/known/" + i5 + "/what", schemaPath: "#/properties/known/items/properties/what/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema11.properties.known.items.properties.what, data: data35 };
                  if (vErrors === null) {
                    vErrors = [err77];
                  } else {
                    vErrors.push(err77);
                  }
                  errors++;
                }
                if (func3(data35) < 1) {
                  const err78 = { instancePath: instancePath + "/known/" + i5 + "/what", schemaPath: "#/properties/known/items/properties/what/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.known.items.properties.what, data: data35 };
                  if (vErrors === null) {
                    vErrors = [err78];
                  } else {
                    vErrors.push(err78);
                  }
                  errors++;
                }
              } else {
                const err79 = { instancePath: instancePath + "/known/" + i5 + "/what", schemaPath: "#/properties/known/items/properties/what/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.known.items.properties.what.type, parentSchema: schema11.properties.known.items.properties.what, data: data35 };
                if (vErrors === null) {
                  vErrors = [err79];
                } else {
                  vErrors.push(err79);
                }
                errors++;
              }
            }
            if (data34.is !== void 0) {
              let data36 = data34.is;
              if (typeof data36 === "string") {
                if (func3(data36) > 400) {
                  const err80 = { instancePath: instancePath + "/known/" + i5 + "/is", schemaPath: "#/properties/known/items/properties/is/maxLength", keyword: "maxLength", params: { limit: 400 }, message: "must NOT have more than 400 characters", schema: 400, parentSchema: schema11.properties.known.items.properties.is, data: data36 };
                  if (vErrors === null) {
                    vErrors = [err80];
                  } else {
                    vErrors.push(err80);
                  }
                  errors++;
                }
                if (func3(data36) < 1) {
                  const err81 = { instancePath: instancePath + "/known/" + i5 + "/is", schemaPath: "#/properties/known/items/properties/is/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.known.items.properties.is, data: data36 };
                  if (vErrors === null) {
                    vErrors = [err81];
                  } else {
                    vErrors.push(err81);
                  }
                  errors++;
                }
              } else {
                const err82 = { instancePath: instancePath + "/known/" + i5 + "/is", schemaPath: "#/properties/known/items/properties/is/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.known.items.properties.is.type, parentSchema: schema11.properties.known.items.properties.is, data: data36 };
                if (vErrors === null) {
                  vErrors = [err82];
                } else {
                  vErrors.push(err82);
                }
                errors++;
              }
            }
            if (data34.from !== void 0) {
              let data37 = data34.from;
              if (typeof data37 === "string") {
                if (func3(data37) > 300) {
                  const err83 = { instancePath: instancePath + "/known/" + i5 + "/from", schemaPath: "#/properties/known/items/properties/from/maxLength", keyword: "maxLength", params: { limit: 300 }, message: "must NOT have more than 300 characters", schema: 300, parentSchema: schema11.properties.known.items.properties.from, data: data37 };
                  if (vErrors === null) {
                    vErrors = [err83];
                  } else {
                    vErrors.push(err83);
                  }
                  errors++;
                }
                if (func3(data37) < 1) {
                  const err84 = { instancePath: instancePath + "/known/" + i5 + "/from", schemaPath: "#/properties/known/items/properties/from/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.known.items.properties.from, data: data37 };
                  if (vErrors === null) {
                    vErrors = [err84];
                  } else {
                    vErrors.push(err84);
                  }
                  errors++;
                }
              } else {
                const err85 = { instancePath: instancePath + "/known/" + i5 + "/from", schemaPath: "#/properties/known/items/properties/from/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.known.items.properties.from.type, parentSchema: schema11.properties.known.items.properties.from, data: data37 };
                if (vErrors === null) {
                  vErrors = [err85];
                } else {
                  vErrors.push(err85);
                }
                errors++;
              }
            }
          } else {
            const err86 = { instancePath: instancePath + "/known/" + i5, schemaPath: "#/properties/known/items/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.known.items.type, parentSchema: schema11.properties.known.items, data: data34 };
            if (vErrors === null) {
              vErrors = [err86];
            } else {
              vErrors.push(err86);
            }
            errors++;
          }
        }
      } else {
        const err87 = { instancePath: instancePath + "/known", schemaPath: "#/properties/known/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema11.properties.known.type, parentSchema: schema11.properties.known, data: data33 };
        if (vErrors === null) {
          vErrors = [err87];
        } else {
          vErrors.push(err87);
        }
        errors++;
      }
    }
    if (data.harness !== void 0) {
      let data38 = data.harness;
      if (Array.isArray(data38)) {
        if (data38.length > 24) {
          const err88 = { instancePath: instancePath + "/harness", schemaPath: "#/properties/harness/maxItems", keyword: "maxItems", params: { limit: 24 }, message: "must NOT have more than 24 items", schema: 24, parentSchema: schema11.properties.harness, data: data38 };
          if (vErrors === null) {
            vErrors = [err88];
          } else {
            vErrors.push(err88);
          }
          errors++;
        }
        const len5 = data38.length;
        for (let i6 = 0; i6 < len5; i6++) {
          let data39 = data38[i6];
          if (data39 && typeof data39 == "object" && !Array.isArray(data39)) {
            for (const key7 in data39) {
              if (!(key7 === "connector" || key7 === "splice" || key7 === "wire" || key7 === "wires" || key7 === "at" || key7 === "minutes" || key7 === "length" || key7 === "size")) {
                const err89 = { instancePath: instancePath + "/harness/" + i6, schemaPath: "#/properties/harness/items/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key7 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11.properties.harness.items, data: data39 };
                if (vErrors === null) {
                  vErrors = [err89];
                } else {
                  vErrors.push(err89);
                }
                errors++;
              }
            }
            if (data39.connector !== void 0) {
              let data40 = data39.connector;
              if (typeof data40 === "string") {
                if (func3(data40) > 60) {
                  const err90 = { instancePath: instancePath + "/harness/" + i6 + "/connector", schemaPath: "#/properties/harness/items/properties/connector/maxLength", keyword: "maxLength", params: { limit: 60 }, message: "must NOT have more than 60 characters", schema: 60, parentSchema: schema11.properties.harness.items.properties.connector, data: data40 };
                  if (vErrors === null) {
                    vErrors = [err90];
                  } else {
                    vErrors.push(err90);
                  }
                  errors++;
                }
                if (func3(data40) < 1) {
                  const err91 = { instancePath: instancePath + "/harness/" + i6 + "/connector", schemaPath: "#/properties/harness/items/properties/connector/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.harness.items.properties.connector, data: data40 };
                  if (vErrors === null) {
                    vErrors = [err91];
                  } else {
                    vErrors.push(err91);
                  }
                  errors++;
                }
              } else {
                const err92 = { instancePath: instancePath + "/harness/" + i6 + "/connector", schemaPath: "#/properties/harness/items/properties/connector/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.harness.items.properties.connector.type, parentSchema: schema11.properties.harness.items.properties.connector, data: data40 };
                if (vErrors === null) {
                  vErrors = [err92];
                } else {
                  vErrors.push(err92);
                }
                errors++;
              }
            }
            if (data39.splice !== void 0) {
              let data41 = data39.splice;
              if (typeof data41 === "string") {
                if (func3(data41) > 60) {
                  const err93 = { instancePath: instancePath + "/harness/" + i6 + "/splice", schemaPath: "#/properties/harness/items/properties/splice/maxLength", keyword: "maxLength", params: { limit: 60 }, message: "must NOT have more than 60 characters", schema: 60, parentSchema: schema11.properties.harness.items.properties.splice, data: data41 };
                  if (vErrors === null) {
                    vErrors = [err93];
                  } else {
                    vErrors.push(err93);
                  }
                  errors++;
                }
                if (func3(data41) < 1) {
                  const err94 = { instancePath: instancePath + "/harness/" + i6 + "/splice", schemaPath: "#/properties/harness/items/properties/splice/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.harness.items.properties.splice, data: data41 };
                  if (vErrors === null) {
                    vErrors = [err94];
                  } else {
                    vErrors.push(err94);
                  }
                  errors++;
                }
              } else {
                const err95 = { instancePath: instancePath + "/harness/" + i6 + "/splice", schemaPath: "#/properties/harness/items/properties/splice/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.harness.items.properties.splice.type, parentSchema: schema11.properties.harness.items.properties.splice, data: data41 };
                if (vErrors === null) {
                  vErrors = [err95];
                } else {
                  vErrors.push(err95);
                }
                errors++;
              }
            }
            if (data39.wire !== void 0) {
              let data42 = data39.wire;
              if (typeof data42 === "string") {
                if (func3(data42) > 60) {
                  const err96 = { instancePath: instancePath + "/harness/" + i6 + "/wire", schemaPath: "#/properties/harness/items/properties/wire/maxLength", keyword: "maxLength", params: { limit: 60 }, message: "must NOT have more than 60 characters", schema: 60, parentSchema: schema11.properties.harness.items.properties.wire, data: data42 };
                  if (vErrors === null) {
                    vErrors = [err96];
                  } else {
                    vErrors.push(err96);
                  }
                  errors++;
                }
                if (func3(data42) < 1) {
                  const err97 = { instancePath: instancePath + "/harness/" + i6 + "/wire", schemaPath: "#/properties/harness/items/properties/wire/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.harness.items.properties.wire, data: data42 };
                  if (vErrors === null) {
                    vErrors = [err97];
                  } else {
                    vErrors.push(err97);
                  }
                  errors++;
                }
              } else {
                const err98 = { instancePath: instancePath + "/harness/" + i6 + "/wire", schemaPath: "#/properties/harness/items/properties/wire/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.harness.items.properties.wire.type, parentSchema: schema11.properties.harness.items.properties.wire, data: data42 };
                if (vErrors === null) {
                  vErrors = [err98];
                } else {
                  vErrors.push(err98);
                }
                errors++;
              }
            }
            if (data39.wires !== void 0) {
              let data43 = data39.wires;
              if (Array.isArray(data43)) {
                if (data43.length > 24) {
                  const err99 = { instancePath: instancePath + "/harness/" + i6 + "/wires", schemaPath: "#/properties/harness/items/properties/wires/maxItems", keyword: "maxItems", params: { limit: 24 }, message: "must NOT have more than 24 items", schema: 24, parentSchema: schema11.properties.harness.items.properties.wires, data: data43 };
                  if (vErrors === null) {
                    vErrors = [err99];
                  } else {
                    vErrors.push(err99);
                  }
                  errors++;
                }
                if (data43.length < 1) {
                  const err100 = { instancePath: instancePath + "/harness/" + i6 + "/wires", schemaPath: "#/properties/harness/items/properties/wires/minItems", keyword: "minItems", params: { limit: 1 }, message: "must NOT have fewer than 1 items", schema: 1, parentSchema: schema11.properties.harness.items.properties.wires, data: data43 };
                  if (vErrors === null) {
                    vErrors = [err100];
                  } else {
                    vErrors.push(err100);
                  }
                  errors++;
                }
                const len6 = data43.length;
                for (let i7 = 0; i7 < len6; i7++) {
                  let data44 = data43[i7];
                  if (typeof data44 === "string") {
                    if (func3(data44) > 60) {
                      const err101 = { instancePath: instancePath + "/harness/" + i6 + "/wires/" + i7, schemaPath: "#/properties/harness/items/properties/wires/items/maxLength", keyword: "maxLength", params: { limit: 60 }, message: "must NOT have more than 60 characters", schema: 60, parentSchema: schema11.properties.harness.items.properties.wires.items, data: data44 };
                      if (vErrors === null) {
                        vErrors = [err101];
                      } else {
                        vErrors.push(err101);
                      }
                      errors++;
                    }
                    if (func3(data44) < 1) {
                      const err102 = { instancePath: instancePath + "/harness/" + i6 + "/wires/" + i7, schemaPath: "#/properties/harness/items/properties/wires/items/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.harness.items.properties.wires.items, data: data44 };
                      if (vErrors === null) {
                        vErrors = [err102];
                      } else {
                        vErrors.push(err102);
                      }
                      errors++;
                    }
                  } else {
                    const err103 = { instancePath: instancePath + "/harness/" + i6 + "/wires/" + i7, schemaPath: "#/properties/harness/items/properties/wires/items/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.harness.items.properties.wires.items.type, parentSchema: schema11.properties.harness.items.properties.wires.items, data: data44 };
                    if (vErrors === null) {
                      vErrors = [err103];
                    } else {
                      vErrors.push(err103);
                    }
                    errors++;
                  }
                }
              } else {
                const err104 = { instancePath: instancePath + "/harness/" + i6 + "/wires", schemaPath: "#/properties/harness/items/properties/wires/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema11.properties.harness.items.properties.wires.type, parentSchema: schema11.properties.harness.items.properties.wires, data: data43 };
                if (vErrors === null) {
                  vErrors = [err104];
                } else {
                  vErrors.push(err104);
                }
                errors++;
              }
            }
            if (data39.at !== void 0) {
              let data45 = data39.at;
              if (typeof data45 === "string") {
                if (func3(data45) > 40) {
                  const err105 = { instancePath: instancePath + "/harness/" + i6 + "/at", schemaPath: "#/properties/harness/items/properties/at/maxLength", keyword: "maxLength", params: { limit: 40 }, message: "must NOT have more than 40 characters", schema: 40, parentSchema: schema11.properties.harness.items.properties.at, data: data45 };
                  if (vErrors === null) {
                    vErrors = [err105];
                  } else {
                    vErrors.push(err105);
                  }
                  errors++;
                }
                if (func3(data45) < 1) {
                  const err106 = { instancePath: instancePath + "/harness/" + i6 + "/at", schemaPath: "#/properties/harness/items/properties/at/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.harness.items.properties.at, data: data45 };
                  if (vErrors === null) {
                    vErrors = [err106];
                  } else {
                    vErrors.push(err106);
                  }
                  errors++;
                }
              } else {
                const err107 = { instancePath: instancePath + "/harness/" + i6 + "/at", schemaPath: "#/properties/harness/items/properties/at/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.harness.items.properties.at.type, parentSchema: schema11.properties.harness.items.properties.at, data: data45 };
                if (vErrors === null) {
                  vErrors = [err107];
                } else {
                  vErrors.push(err107);
                }
                errors++;
              }
            }
            if (data39.minutes !== void 0) {
              let data46 = data39.minutes;
              if (typeof data46 == "number" && isFinite(data46)) {
                if (data46 > 240 || isNaN(data46)) {
                  const err108 = { instancePath: instancePath + "/harness/" + i6 + "/minutes", schemaPath: "#/properties/harness/items/properties/minutes/maximum", keyword: "maximum", params: { comparison: "<=", limit: 240 }, message: "must be <= 240", schema: 240, parentSchema: schema11.properties.harness.items.properties.minutes, data: data46 };
                  if (vErrors === null) {
                    vErrors = [err108];
                  } else {
                    vErrors.push(err108);
                  }
                  errors++;
                }
                if (data46 < 0 || isNaN(data46)) {
                  const err109 = { instancePath: instancePath + "/harness/" + i6 + "/minutes", schemaPath: "#/properties/harness/items/properties/minutes/minimum", keyword: "minimum", params: { comparison: ">=", limit: 0 }, message: "must be >= 0", schema: 0, parentSchema: schema11.properties.harness.items.properties.minutes, data: data46 };
                  if (vErrors === null) {
                    vErrors = [err109];
                  } else {
                    vErrors.push(err109);
                  }
                  errors++;
                }
              } else {
                const err110 = { instancePath: instancePath + "/harness/" + i6 + "/minutes", schemaPath: "#/properties/harness/items/properties/minutes/type", keyword: "type", params: { type: "number" }, message: "must be number", schema: schema11.properties.harness.items.properties.minutes.type, parentSchema: schema11.properties.harness.items.properties.minutes, data: data46 };
                if (vErrors === null) {
                  vErrors = [err110];
                } else {
                  vErrors.push(err110);
                }
                errors++;
              }
            }
            if (data39.length !== void 0) {
              let data47 = data39.length;
              if (typeof data47 === "string") {
                if (func3(data47) > 40) {
                  const err111 = { instancePath: instancePath + "/harness/" + i6 + "/length", schemaPath: "#/properties/harness/items/properties/length/maxLength", keyword: "maxLength", params: { limit: 40 }, message: "must NOT have more than 40 characters", schema: 40, parentSchema: schema11.properties.harness.items.properties.length, data: data47 };
                  if (vErrors === null) {
                    vErrors = [err111];
                  } else {
                    vErrors.push(err111);
                  }
                  errors++;
                }
                if (func3(data47) < 1) {
                  const err112 = { instancePath: instancePath + "/harness/" + i6 + "/length", schemaPath: "#/properties/harness/items/properties/length/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.harness.items.properties.length, data: data47 };
                  if (vErrors === null) {
                    vErrors = [err112];
                  } else {
                    vErrors.push(err112);
                  }
                  errors++;
                }
              } else {
                const err113 = { instancePath: instancePath + "/harness/" + i6 + "/length", schemaPath: "#/properties/harness/items/properties/length/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.harness.items.properties.length.type, parentSchema: schema11.properties.harness.items.properties.length, data: data47 };
                if (vErrors === null) {
                  vErrors = [err113];
                } else {
                  vErrors.push(err113);
                }
                errors++;
              }
            }
            if (data39.size !== void 0) {
              let data48 = data39.size;
              if (typeof data48 === "string") {
                if (func3(data48) > 40) {
                  const err114 = { instancePath: instancePath + "/harness/" + i6 + "/size", schemaPath: "#/properties/harness/items/properties/size/maxLength", keyword: "maxLength", params: { limit: 40 }, message: "must NOT have more than 40 characters", schema: 40, parentSchema: schema11.properties.harness.items.properties.size, data: data48 };
                  if (vErrors === null) {
                    vErrors = [err114];
                  } else {
                    vErrors.push(err114);
                  }
                  errors++;
                }
                if (func3(data48) < 1) {
                  const err115 = { instancePath: instancePath + "/harness/" + i6 + "/size", schemaPath: "#/properties/harness/items/properties/size/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.harness.items.properties.size, data: data48 };
                  if (vErrors === null) {
                    vErrors = [err115];
                  } else {
                    vErrors.push(err115);
                  }
                  errors++;
                }
              } else {
                const err116 = { instancePath: instancePath + "/harness/" + i6 + "/size", schemaPath: "#/properties/harness/items/properties/size/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.harness.items.properties.size.type, parentSchema: schema11.properties.harness.items.properties.size, data: data48 };
                if (vErrors === null) {
                  vErrors = [err116];
                } else {
                  vErrors.push(err116);
                }
                errors++;
              }
            }
          } else {
            const err117 = { instancePath: instancePath + "/harness/" + i6, schemaPath: "#/properties/harness/items/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.harness.items.type, parentSchema: schema11.properties.harness.items, data: data39 };
            if (vErrors === null) {
              vErrors = [err117];
            } else {
              vErrors.push(err117);
            }
            errors++;
          }
        }
      } else {
        const err118 = { instancePath: instancePath + "/harness", schemaPath: "#/properties/harness/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema11.properties.harness.type, parentSchema: schema11.properties.harness, data: data38 };
        if (vErrors === null) {
          vErrors = [err118];
        } else {
          vErrors.push(err118);
        }
        errors++;
      }
    }
    if (data.shares !== void 0) {
      let data49 = data.shares;
      if (Array.isArray(data49)) {
        if (data49.length > 12) {
          const err119 = { instancePath: instancePath + "/shares", schemaPath: "#/properties/shares/maxItems", keyword: "maxItems", params: { limit: 12 }, message: "must NOT have more than 12 items", schema: 12, parentSchema: schema11.properties.shares, data: data49 };
          if (vErrors === null) {
            vErrors = [err119];
          } else {
            vErrors.push(err119);
          }
          errors++;
        }
        const len7 = data49.length;
        for (let i8 = 0; i8 < len7; i8++) {
          let data50 = data49[i8];
          if (data50 && typeof data50 == "object" && !Array.isArray(data50)) {
            if (data50.name === void 0) {
              const err120 = { instancePath: instancePath + "/shares/" + i8, schemaPath: "#/properties/shares/items/required", keyword: "required", params: { missingProperty: "name" }, message: "must have required property 'name'", schema: schema11.properties.shares.items.required, parentSchema: schema11.properties.shares.items, data: data50 };
              if (vErrors === null) {
                vErrors = [err120];
              } else {
                vErrors.push(err120);
              }
              errors++;
            }
            if (data50.shares === void 0) {
              const err121 = { instancePath: instancePath + "/shares/" + i8, schemaPath: "#/properties/shares/items/required", keyword: "required", params: { missingProperty: "shares" }, message: "must have required property 'shares'", schema: schema11.properties.shares.items.required, parentSchema: schema11.properties.shares.items, data: data50 };
              if (vErrors === null) {
                vErrors = [err121];
              } else {
                vErrors.push(err121);
              }
              errors++;
            }
            for (const key8 in data50) {
              if (!(key8 === "name" || key8 === "shares" || key8 === "works" || key8 === "how" || key8 === "sister")) {
                const err122 = { instancePath: instancePath + "/shares/" + i8, schemaPath: "#/properties/shares/items/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key8 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11.properties.shares.items, data: data50 };
                if (vErrors === null) {
                  vErrors = [err122];
                } else {
                  vErrors.push(err122);
                }
                errors++;
              }
            }
            if (data50.name !== void 0) {
              let data51 = data50.name;
              if (typeof data51 === "string") {
                if (func3(data51) > 60) {
                  const err123 = { instancePath: instancePath + "/shares/" + i8 + "/name", schemaPath: "#/properties/shares/items/properties/name/maxLength", keyword: "maxLength", params: { limit: 60 }, message: "must NOT have more than 60 characters", schema: 60, parentSchema: schema11.properties.shares.items.properties.name, data: data51 };
                  if (vErrors === null) {
                    vErrors = [err123];
                  } else {
                    vErrors.push(err123);
                  }
                  errors++;
                }
                if (func3(data51) < 1) {
                  const err124 = { instancePath: instancePath + "/shares/" + i8 + "/name", schemaPath: "#/properties/shares/items/properties/name/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.shares.items.properties.name, data: data51 };
                  if (vErrors === null) {
                    vErrors = [err124];
                  } else {
                    vErrors.push(err124);
                  }
                  errors++;
                }
              } else {
                const err125 = { instancePath: instancePath + "/shares/" + i8 + "/name", schemaPath: "#/properties/shares/items/properties/name/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.shares.items.properties.name.type, parentSchema: schema11.properties.shares.items.properties.name, data: data51 };
                if (vErrors === null) {
                  vErrors = [err125];
                } else {
                  vErrors.push(err125);
                }
                errors++;
              }
            }
            if (data50.shares !== void 0) {
              let data52 = data50.shares;
              if (Array.isArray(data52)) {
                if (data52.length > 4) {
                  const err126 = { instancePath: instancePath + "/shares/" + i8 + "/shares", schemaPath: "#/properties/shares/items/properties/shares/maxItems", keyword: "maxItems", params: { limit: 4 }, message: "must NOT have more than 4 items", schema: 4, parentSchema: schema11.properties.shares.items.properties.shares, data: data52 };
                  if (vErrors === null) {
                    vErrors = [err126];
                  } else {
                    vErrors.push(err126);
                  }
                  errors++;
                }
                if (data52.length < 1) {
                  const err127 = { instancePath: instancePath + "/shares/" + i8 + "/shares", schemaPath: "#/properties/shares/items/properties/shares/minItems", keyword: "minItems", params: { limit: 1 }, message: "must NOT have fewer than 1 items", schema: 1, parentSchema: schema11.properties.shares.items.properties.shares, data: data52 };
                  if (vErrors === null) {
                    vErrors = [err127];
                  } else {
                    vErrors.push(err127);
                  }
                  errors++;
                }
                const len8 = data52.length;
                for (let i9 = 0; i9 < len8; i9++) {
                  let data53 = data52[i9];
                  if (!(data53 === "feed" || data53 === "reference" || data53 === "ground" || data53 === "plug")) {
                    const err128 = { instancePath: instancePath + "/shares/" + i8 + "/shares/" + i9, schemaPath: "#/properties/shares/items/properties/shares/items/enum", keyword: "enum", params: { allowedValues: schema11.properties.shares.items.properties.shares.items.enum }, message: "must be equal to one of the allowed values", schema: schema11.properties.shares.items.properties.shares.items.enum, parentSchema: schema11.properties.shares.items.properties.shares.items, data: data53 };
                    if (vErrors === null) {
                      vErrors = [err128];
                    } else {
                      vErrors.push(err128);
                    }
                    errors++;
                  }
                }
                let i10 = data52.length;
                let j1;
                if (i10 > 1) {
                  outer1: for (; i10--; ) {
                    for (j1 = i10; j1--; ) {
                      if (func0(data52[i10], data52[j1])) {
                        const err129 = { instancePath: instancePath + "/shares/" + i8 + "/shares", schemaPath: "#/properties/shares/items/properties/shares/uniqueItems", keyword: "uniqueItems", params: { i: i10, j: j1 }, message: "must NOT have duplicate items (items ## " + j1 + " and " + i10 + " are identical)", schema: true, parentSchema: schema11.properties.shares.items.properties.shares, data: data52 };
                        if (vErrors === null) {
                          vErrors = [err129];
                        } else {
                          vErrors.push(err129);
                        }
                        errors++;
                        break outer1;
                      }
                    }
                  }
                }
              } else {
                const err130 = { instancePath: instancePath + "/shares/" + i8 + "/shares", schemaPath: "#/properties/shares/items/properties/shares/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema11.properties.shares.items.properties.shares.type, parentSchema: schema11.properties.shares.items.properties.shares, data: data52 };
                if (vErrors === null) {
                  vErrors = [err130];
                } else {
                  vErrors.push(err130);
                }
                errors++;
              }
            }
            if (data50.works !== void 0) {
              let data54 = data50.works;
              if (!(data54 === "works" || data54 === "fails" || data54 === "not-known")) {
                const err131 = { instancePath: instancePath + "/shares/" + i8 + "/works", schemaPath: "#/properties/shares/items/properties/works/enum", keyword: "enum", params: { allowedValues: schema11.properties.shares.items.properties.works.enum }, message: "must be equal to one of the allowed values", schema: schema11.properties.shares.items.properties.works.enum, parentSchema: schema11.properties.shares.items.properties.works, data: data54 };
                if (vErrors === null) {
                  vErrors = [err131];
                } else {
                  vErrors.push(err131);
                }
                errors++;
              }
            }
            if (data50.how !== void 0) {
              let data55 = data50.how;
              if (typeof data55 === "string") {
                if (func3(data55) > 200) {
                  const err132 = { instancePath: instancePath + "/shares/" + i8 + "/how", schemaPath: "#/properties/shares/items/properties/how/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema11.properties.shares.items.properties.how, data: data55 };
                  if (vErrors === null) {
                    vErrors = [err132];
                  } else {
                    vErrors.push(err132);
                  }
                  errors++;
                }
                if (func3(data55) < 1) {
                  const err133 = { instancePath: instancePath + "/shares/" + i8 + "/how", schemaPath: "#/properties/shares/items/properties/how/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.shares.items.properties.how, data: data55 };
                  if (vErrors === null) {
                    vErrors = [err133];
                  } else {
                    vErrors.push(err133);
                  }
                  errors++;
                }
              } else {
                const err134 = { instancePath: instancePath + "/shares/" + i8 + "/how", schemaPath: "#/properties/shares/items/properties/how/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.shares.items.properties.how.type, parentSchema: schema11.properties.shares.items.properties.how, data: data55 };
                if (vErrors === null) {
                  vErrors = [err134];
                } else {
                  vErrors.push(err134);
                }
                errors++;
              }
            }
            if (data50.sister !== void 0) {
              let data56 = data50.sister;
              if (typeof data56 === "string") {
                if (func3(data56) > 40) {
                  const err135 = { instancePath: instancePath + "/shares/" + i8 + "/sister", schemaPath: "#/properties/shares/items/properties/sister/maxLength", keyword: "maxLength", params: { limit: 40 }, message: "must NOT have more than 40 characters", schema: 40, parentSchema: schema11.properties.shares.items.properties.sister, data: data56 };
                  if (vErrors === null) {
                    vErrors = [err135];
                  } else {
                    vErrors.push(err135);
                  }
                  errors++;
                }
                if (func3(data56) < 1) {
                  const err136 = { instancePath: instancePath + "/shares/" + i8 + "/sister", schemaPath: "#/properties/shares/items/properties/sister/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.shares.items.properties.sister, data: data56 };
                  if (vErrors === null) {
                    vErrors = [err136];
                  } else {
                    vErrors.push(err136);
                  }
                  errors++;
                }
              } else {
                const err137 = { instancePath: instancePath + "/shares/" + i8 + "/sister", schemaPath: "#/properties/shares/items/properties/sister/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.shares.items.properties.sister.type, parentSchema: schema11.properties.shares.items.properties.sister, data: data56 };
                if (vErrors === null) {
                  vErrors = [err137];
                } else {
                  vErrors.push(err137);
                }
                errors++;
              }
            }
          } else {
            const err138 = { instancePath: instancePath + "/shares/" + i8, schemaPath: "#/properties/shares/items/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.shares.items.type, parentSchema: schema11.properties.shares.items, data: data50 };
            if (vErrors === null) {
              vErrors = [err138];
            } else {
              vErrors.push(err138);
            }
            errors++;
          }
        }
      } else {
        const err139 = { instancePath: instancePath + "/shares", schemaPath: "#/properties/shares/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema11.properties.shares.type, parentSchema: schema11.properties.shares, data: data49 };
        if (vErrors === null) {
          vErrors = [err139];
        } else {
          vErrors.push(err139);
        }
        errors++;
      }
    }
    if (data["simulated-fault"] !== void 0) {
      let data57 = data["simulated-fault"];
      if (typeof data57 === "string") {
        if (!pattern5.test(data57)) {
          const err140 = { instancePath: instancePath + "/simulated-fault", schemaPath: "#/properties/simulated-fault/pattern", keyword: "pattern", params: { pattern: "^[a-z][a-z0-9.-]{0,80}$" }, message: 'must match pattern "^[a-z][a-z0-9.-]{0,80}$"', schema: "^[a-z][a-z0-9.-]{0,80}$", parentSchema: schema11.properties["simulated-fault"], data: data57 };
          if (vErrors === null) {
            vErrors = [err140];
          } else {
            vErrors.push(err140);
          }
          errors++;
        }
      } else {
        const err141 = { instancePath: instancePath + "/simulated-fault", schemaPath: "#/properties/simulated-fault/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties["simulated-fault"].type, parentSchema: schema11.properties["simulated-fault"], data: data57 };
        if (vErrors === null) {
          vErrors = [err141];
        } else {
          vErrors.push(err141);
        }
        errors++;
      }
    }
    if (data.intermittent !== void 0) {
      let data58 = data.intermittent;
      if (typeof data58 !== "boolean") {
        const err142 = { instancePath: instancePath + "/intermittent", schemaPath: "#/properties/intermittent/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean", schema: schema11.properties.intermittent.type, parentSchema: schema11.properties.intermittent, data: data58 };
        if (vErrors === null) {
          vErrors = [err142];
        } else {
          vErrors.push(err142);
        }
        errors++;
      }
    }
    if (data.notes !== void 0) {
      let data59 = data.notes;
      if (typeof data59 === "string") {
        if (func3(data59) > 4e3) {
          const err143 = { instancePath: instancePath + "/notes", schemaPath: "#/properties/notes/maxLength", keyword: "maxLength", params: { limit: 4e3 }, message: "must NOT have more than 4000 characters", schema: 4e3, parentSchema: schema11.properties.notes, data: data59 };
          if (vErrors === null) {
            vErrors = [err143];
          } else {
            vErrors.push(err143);
          }
          errors++;
        }
      } else {
        const err144 = { instancePath: instancePath + "/notes", schemaPath: "#/properties/notes/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.notes.type, parentSchema: schema11.properties.notes, data: data59 };
        if (vErrors === null) {
          vErrors = [err144];
        } else {
          vErrors.push(err144);
        }
        errors++;
      }
    }
  } else {
    const err145 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.type, parentSchema: schema11, data };
    if (vErrors === null) {
      vErrors = [err145];
    } else {
      vErrors.push(err145);
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
