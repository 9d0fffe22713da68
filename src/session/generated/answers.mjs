// Made from docs/schema/answers.schema.json by scripts/schemas.mjs. Change the schema, not this file.
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
var schema11 = { "$schema": "http://json-schema.org/draft-07/schema#", "$id": "answers.schema.json", "title": "Answers", "description": "What a person would do in a session, in order, for a run without one: ohmward run PROCEDURE --answers FILE.", "type": "object", "required": ["answers"], "additionalProperties": false, "properties": { "procedure": { "title": "Procedure", "description": "Name of the procedure; may be left out when the command line names it.", "type": "string", "pattern": "^[a-z][a-z0-9-]{0,60}$" }, "answers": { "title": "Answers", "description": "In the order in which they are given.", "type": "array", "minItems": 1, "maxItems": 1e3, "items": { "title": "AnswerDraft", "type": "object", "minProperties": 1, "additionalProperties": false, "properties": { "step": { "title": "Step", "description": "The step this belongs to; the run stops when another is asked.", "type": "string", "maxLength": 200, "examples": ["feed/to-battery"] }, "reading": { "title": "Reading", "description": "As a person types it.", "type": ["string", "number"], "examples": ["4.98 V"] }, "captured": { "title": "Captured", "description": "A saved capture answers the step.", "type": "object", "required": ["file"], "additionalProperties": false, "properties": { "file": { "title": "File", "description": "Its path.", "type": "string", "minLength": 1, "maxLength": 4e3, "examples": ["crank.csv"] }, "second": { "title": "Second file", "description": "Path of the file with the other channels of the same crank.", "type": "string", "minLength": 1, "maxLength": 4e3 }, "against": { "title": "Against", "description": "Path of a known-good capture; or the angles the edges should be at.", "type": "string", "minLength": 1, "maxLength": 4e3, "examples": ["falls at 114 deg, rises at 294 deg; within 4 deg"] }, "channel": { "title": "Channel", "description": "Which one is judged, from 1.", "type": "integer", "minimum": 1, "maximum": 1e3 } } }, "watched": { "title": "Watched", "description": "What was seen in one round of moving or warming at the step, which it does not answer.", "type": "string", "minLength": 1, "maxLength": 2e3, "examples": ["plug: 4.9 V to 5.1 V, 0 drops, 3 min"] }, "choose": { "title": "Choose", "description": "Name of an outcome, or of a look; of a test that no step asks for, of a look.", "type": "string", "examples": ["flat-high"] }, "measure": { "title": "Measure", "description": "A test that no step asks for: instrument and leads, red first.", "type": "string", "minLength": 1, "maxLength": 200, "examples": ["volts sensor.feed battery.negative"] }, "test": { "title": "Standard test", "description": "The same by the name of a standard test of the circuit.", "type": "string", "maxLength": 200, "examples": ["sensor.feed.volts"] }, "state": { "title": "Vehicle state", "description": "State of the vehicle in that test.", "enum": ["key-off", "key-on", "cranking", "running"], "default": "key-on" }, "unplug": { "title": "Unplugged", "description": "Parts whose connector is off.", "type": "array", "maxItems": 20, "items": { "type": "string", "maxLength": 100 } }, "bridges": { "title": "Clipped in", "description": "Two terminals and what is between: lead, test-light, lamp or ohms.", "type": "array", "maxItems": 6, "items": { "type": "string", "maxLength": 200, "examples": ["sensor.signal battery.negative 470 ohm"] } }, "spare": { "title": "A good spare sensor is plugged in", "description": "Instead of the own one of the vehicle.", "type": "boolean" }, "moving": { "title": "The target passes the sensor", "description": "By cranking, by hand or with a magnet.", "type": "boolean" }, "wiggle": { "title": "Harness and connectors are moved meanwhile", "description": "Brings out an intermittent fault.", "type": "boolean" }, "made": { "title": "When it was made", "description": "Of such a test that was made already: before the job, or at a time of the clock. Its cautions are not asked for.", "type": "string", "pattern": "^(before the job|([01][0-9]|2[0-3]):[0-5][0-9])$", "examples": ["before the job", "14:05"] }, "aside": { "title": "Set aside", "description": "Such a test cannot be made here, and is proposed no more; false: it can after all. Beside connector and no-state true may be left out.", "type": "boolean" }, "connector": { "title": "Connector out of reach", "description": "The part whose connector cannot be reached: nothing that needs it is proposed, and steps that need it are gone round. With aside: false it can be after all; the reason stands in cannot.", "type": "string", "minLength": 1, "maxLength": 100, "examples": ["sensor"] }, "no-state": { "title": "Vehicle state out of reach", "description": "The vehicle cannot be had in this state, nor in one that is reached through it: nothing that needs it is proposed, and steps that need it are gone round. With aside: false it can be after all; the reason stands in cannot.", "enum": ["key-on", "cranking", "running"], "examples": ["cranking"] }, "faults": { "title": "Own conclusion", "description": "Concludes on these faults of the circuit, whatever the tree says.", "type": "array", "minItems": 1, "maxItems": 50, "items": { "type": "string", "maxLength": 200, "examples": ["wire.signal.open"] } }, "words": { "title": "Own conclusion in words", "description": "Concludes with what the person says is wrong.", "type": "string", "minLength": 1, "maxLength": 2e3 }, "known": { "title": "A value of this car", "description": "What is known about this car is set: what, value, from where. With the value unknown it is not known after all.", "type": "object", "required": ["what", "is", "from"], "additionalProperties": false, "properties": { "what": { "title": "What", "description": "In the words of the circuit or by its key.", "type": "string", "minLength": 1, "maxLength": 200, "examples": ["battery at rest"] }, "is": { "title": "Is", "description": "A value as in a circuit file, or what a module's pin leads to.", "type": "string", "minLength": 1, "maxLength": 400, "examples": ["12.4 V"] }, "from": { "title": "From", "description": "maker, measured, label or other; then words of one's own.", "type": "string", "minLength": 1, "maxLength": 300, "examples": ["measured"] } } }, "place": { "title": "Location of a short", "description": "The drops along a stretch of wire, fed at either end with everything on it unplugged.", "type": "object", "required": ["wire", "touches", "drops", "unplugged"], "additionalProperties": false, "properties": { "wire": { "title": "Wire", "description": "A wire of the sensor.", "type": "string", "minLength": 1, "maxLength": 60, "examples": ["signal"] }, "touches": { "title": "Touches", "description": "ground, battery, or another wire of the sensor, as in feed-wire.", "type": "string", "minLength": 1, "maxLength": 60, "examples": ["ground", "feed-wire"] }, "from": { "title": "From", "description": "Near end of the stretch; the sensor's connector when left out.", "type": "string", "minLength": 1, "maxLength": 200, "examples": ["sensor.signal"] }, "to": { "title": "To", "description": "Far end of the stretch; that of the wire when left out.", "type": "string", "minLength": 1, "maxLength": 200, "examples": ["bulkhead.signal"] }, "drops": { "title": "Drops", "description": "Fed at the near end, then at the far one; behind ; currents and length where they are known.", "type": "string", "minLength": 1, "maxLength": 200, "examples": ["6.6 mV, 15.5 mV"] }, "unplugged": { "title": "Unplugged", "description": "Parts that were off: all that hang on both wires.", "type": "array", "maxItems": 20, "items": { "type": "string", "maxLength": 100 } } } }, "done": { "title": "Done", "const": true }, "cannot": { "title": "Cannot do", "description": "Why.", "type": "string", "minLength": 1, "maxLength": 2e3 }, "acknowledge": { "title": "Acknowledge", "description": "The cautions of this step are read and acknowledged.", "const": true }, "note": { "title": "Note", "description": "A remark that goes into the record; with a test, next to that test.", "type": "string", "minLength": 1, "maxLength": 2e3 }, "back": { "title": "Back", "description": "Takes back what was done last: an answer, or a value that was set.", "const": true }, "pause": { "title": "Pause", "const": true }, "again": { "title": "Repeated", "description": 'What the test showed that is asked for before the conclusion: the one reading it rests on, repeated, or the most telling one (from "faults" of its own, where they are given).', "type": ["string", "number"], "examples": ["4.98 V"] }, "customer": { "title": "The customer", "description": "After the conclusion: the work is authorised or declined, by whom, and how.", "type": "string", "minLength": 1, "maxLength": 2e3, "examples": ["authorised by R. Example, by telephone, up to 240 EUR"] }, "accept": { "title": "All the same", "description": "Beside a conclusion that rests on one reading: it is not made again, and the record says so.", "const": true }, "conclude": { "title": "Conclude", "description": "Accepts the conclusion.", "const": true } } } } } };
var pattern0 = new RegExp("^[a-z][a-z0-9-]{0,60}$", "u");
var pattern1 = new RegExp("^(before the job|([01][0-9]|2[0-3]):[0-5][0-9])$", "u");
var func2 = Object.prototype.hasOwnProperty;
var func3 = require_ucs2length().default;
function validate10(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  ;
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.answers === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "answers" }, message: "must have required property 'answers'", schema: schema11.required, parentSchema: schema11, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "procedure" || key0 === "answers")) {
        const err1 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11, data };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.procedure !== void 0) {
      let data0 = data.procedure;
      if (typeof data0 === "string") {
        if (!pattern0.test(data0)) {
          const err2 = { instancePath: instancePath + "/procedure", schemaPath: "#/properties/procedure/pattern", keyword: "pattern", params: { pattern: "^[a-z][a-z0-9-]{0,60}$" }, message: 'must match pattern "^[a-z][a-z0-9-]{0,60}$"', schema: "^[a-z][a-z0-9-]{0,60}$", parentSchema: schema11.properties.procedure, data: data0 };
          if (vErrors === null) {
            vErrors = [err2];
          } else {
            vErrors.push(err2);
          }
          errors++;
        }
      } else {
        const err3 = { instancePath: instancePath + "/procedure", schemaPath: "#/properties/procedure/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.procedure.type, parentSchema: schema11.properties.procedure, data: data0 };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data.answers !== void 0) {
      let data1 = data.answers;
      if (Array.isArray(data1)) {
        if (data1.length > 1e3) {
          const err4 = { instancePath: instancePath + "/answers", schemaPath: "#/properties/answers/maxItems", keyword: "maxItems", params: { limit: 1e3 }, message: "must NOT have more than 1000 items", schema: 1e3, parentSchema: schema11.properties.answers, data: data1 };
          if (vErrors === null) {
            vErrors = [err4];
          } else {
            vErrors.push(err4);
          }
          errors++;
        }
        if (data1.length < 1) {
          const err5 = { instancePath: instancePath + "/answers", schemaPath: "#/properties/answers/minItems", keyword: "minItems", params: { limit: 1 }, message: "must NOT have fewer than 1 items", schema: 1, parentSchema: schema11.properties.answers, data: data1 };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
        const len0 = data1.length;
        for (let i0 = 0; i0 < len0; i0++) {
          let data2 = data1[i0];
          if (data2 && typeof data2 == "object" && !Array.isArray(data2)) {
            if (Object.keys(data2).length < 1) {
              const err6 = { instancePath: instancePath + "/answers/" + i0, schemaPath: "#/properties/answers/items/minProperties", keyword: "minProperties", params: { limit: 1 }, message: "must NOT have fewer than 1 properties", schema: 1, parentSchema: schema11.properties.answers.items, data: data2 };
              if (vErrors === null) {
                vErrors = [err6];
              } else {
                vErrors.push(err6);
              }
              errors++;
            }
            for (const key1 in data2) {
              if (!func2.call(schema11.properties.answers.items.properties, key1)) {
                const err7 = { instancePath: instancePath + "/answers/" + i0, schemaPath: "#/properties/answers/items/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key1 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11.properties.answers.items, data: data2 };
                if (vErrors === null) {
                  vErrors = [err7];
                } else {
                  vErrors.push(err7);
                }
                errors++;
              }
            }
            if (data2.step !== void 0) {
              let data3 = data2.step;
              if (typeof data3 === "string") {
                if (func3(data3) > 200) {
                  const err8 = { instancePath: instancePath + "/answers/" + i0 + "/step", schemaPath: "#/properties/answers/items/properties/step/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema11.properties.answers.items.properties.step, data: data3 };
                  if (vErrors === null) {
                    vErrors = [err8];
                  } else {
                    vErrors.push(err8);
                  }
                  errors++;
                }
              } else {
                const err9 = { instancePath: instancePath + "/answers/" + i0 + "/step", schemaPath: "#/properties/answers/items/properties/step/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.answers.items.properties.step.type, parentSchema: schema11.properties.answers.items.properties.step, data: data3 };
                if (vErrors === null) {
                  vErrors = [err9];
                } else {
                  vErrors.push(err9);
                }
                errors++;
              }
            }
            if (data2.reading !== void 0) {
              let data4 = data2.reading;
              if (typeof data4 !== "string" && !(typeof data4 == "number" && isFinite(data4))) {
                const err10 = { instancePath: instancePath + "/answers/" + i0 + "/reading", schemaPath: "#/properties/answers/items/properties/reading/type", keyword: "type", params: { type: schema11.properties.answers.items.properties.reading.type }, message: "must be string,number", schema: schema11.properties.answers.items.properties.reading.type, parentSchema: schema11.properties.answers.items.properties.reading, data: data4 };
                if (vErrors === null) {
                  vErrors = [err10];
                } else {
                  vErrors.push(err10);
                }
                errors++;
              }
            }
            if (data2.captured !== void 0) {
              let data5 = data2.captured;
              if (data5 && typeof data5 == "object" && !Array.isArray(data5)) {
                if (data5.file === void 0) {
                  const err11 = { instancePath: instancePath + "/answers/" + i0 + "/captured", schemaPath: "#/properties/answers/items/properties/captured/required", keyword: "required", params: { missingProperty: "file" }, message: "must have required property 'file'", schema: schema11.properties.answers.items.properties.captured.required, parentSchema: schema11.properties.answers.items.properties.captured, data: data5 };
                  if (vErrors === null) {
                    vErrors = [err11];
                  } else {
                    vErrors.push(err11);
                  }
                  errors++;
                }
                for (const key2 in data5) {
                  if (!(key2 === "file" || key2 === "second" || key2 === "against" || key2 === "channel")) {
                    const err12 = { instancePath: instancePath + "/answers/" + i0 + "/captured", schemaPath: "#/properties/answers/items/properties/captured/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key2 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11.properties.answers.items.properties.captured, data: data5 };
                    if (vErrors === null) {
                      vErrors = [err12];
                    } else {
                      vErrors.push(err12);
                    }
                    errors++;
                  }
                }
                if (data5.file !== void 0) {
                  let data6 = data5.file;
                  if (typeof data6 === "string") {
                    if (func3(data6) > 4e3) {
                      const err13 = { instancePath: instancePath + "/answers/" + i0 + "/captured/file", schemaPath: "#/properties/answers/items/properties/captured/properties/file/maxLength", keyword: "maxLength", params: { limit: 4e3 }, message: "must NOT have more than 4000 characters", schema: 4e3, parentSchema: schema11.properties.answers.items.properties.captured.properties.file, data: data6 };
                      if (vErrors === null) {
                        vErrors = [err13];
                      } else {
                        vErrors.push(err13);
                      }
                      errors++;
                    }
                    if (func3(data6) < 1) {
                      const err14 = { instancePath: instancePath + "/answers/" + i0 + "/captured/file", schemaPath: "#/properties/answers/items/properties/captured/properties/file/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.answers.items.properties.captured.properties.file, data: data6 };
                      if (vErrors === null) {
                        vErrors = [err14];
                      } else {
                        vErrors.push(err14);
                      }
                      errors++;
                    }
                  } else {
                    const err15 = { instancePath: instancePath + "/answers/" + i0 + "/captured/file", schemaPath: "#/properties/answers/items/properties/captured/properties/file/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.answers.items.properties.captured.properties.file.type, parentSchema: schema11.properties.answers.items.properties.captured.properties.file, data: data6 };
                    if (vErrors === null) {
                      vErrors = [err15];
                    } else {
                      vErrors.push(err15);
                    }
                    errors++;
                  }
                }
                if (data5.second !== void 0) {
                  let data7 = data5.second;
                  if (typeof data7 === "string") {
                    if (func3(data7) > 4e3) {
                      const err16 = { instancePath: instancePath + "/answers/" + i0 + "/captured/second", schemaPath: "#/properties/answers/items/properties/captured/properties/second/maxLength", keyword: "maxLength", params: { limit: 4e3 }, message: "must NOT have more than 4000 characters", schema: 4e3, parentSchema: schema11.properties.answers.items.properties.captured.properties.second, data: data7 };
                      if (vErrors === null) {
                        vErrors = [err16];
                      } else {
                        vErrors.push(err16);
                      }
                      errors++;
                    }
                    if (func3(data7) < 1) {
                      const err17 = { instancePath: instancePath + "/answers/" + i0 + "/captured/second", schemaPath: "#/properties/answers/items/properties/captured/properties/second/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.answers.items.properties.captured.properties.second, data: data7 };
                      if (vErrors === null) {
                        vErrors = [err17];
                      } else {
                        vErrors.push(err17);
                      }
                      errors++;
                    }
                  } else {
                    const err18 = { instancePath: instancePath + "/answers/" + i0 + "/captured/second", schemaPath: "#/properties/answers/items/properties/captured/properties/second/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.answers.items.properties.captured.properties.second.type, parentSchema: schema11.properties.answers.items.properties.captured.properties.second, data: data7 };
                    if (vErrors === null) {
                      vErrors = [err18];
                    } else {
                      vErrors.push(err18);
                    }
                    errors++;
                  }
                }
                if (data5.against !== void 0) {
                  let data8 = data5.against;
                  if (typeof data8 === "string") {
                    if (func3(data8) > 4e3) {
                      const err19 = { instancePath: instancePath + "/answers/" + i0 + "/captured/against", schemaPath: "#/properties/answers/items/properties/captured/properties/against/maxLength", keyword: "maxLength", params: { limit: 4e3 }, message: "must NOT have more than 4000 characters", schema: 4e3, parentSchema: schema11.properties.answers.items.properties.captured.properties.against, data: data8 };
                      if (vErrors === null) {
                        vErrors = [err19];
                      } else {
                        vErrors.push(err19);
                      }
                      errors++;
                    }
                    if (func3(data8) < 1) {
                      const err20 = { instancePath: instancePath + "/answers/" + i0 + "/captured/against", schemaPath: "#/properties/answers/items/properties/captured/properties/against/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.answers.items.properties.captured.properties.against, data: data8 };
                      if (vErrors === null) {
                        vErrors = [err20];
                      } else {
                        vErrors.push(err20);
                      }
                      errors++;
                    }
                  } else {
                    const err21 = { instancePath: instancePath + "/answers/" + i0 + "/captured/against", schemaPath: "#/properties/answers/items/properties/captured/properties/against/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.answers.items.properties.captured.properties.against.type, parentSchema: schema11.properties.answers.items.properties.captured.properties.against, data: data8 };
                    if (vErrors === null) {
                      vErrors = [err21];
                    } else {
                      vErrors.push(err21);
                    }
                    errors++;
                  }
                }
                if (data5.channel !== void 0) {
                  let data9 = data5.channel;
                  if (!(typeof data9 == "number" && (!(data9 % 1) && !isNaN(data9)) && isFinite(data9))) {
                    const err22 = { instancePath: instancePath + "/answers/" + i0 + "/captured/channel", schemaPath: "#/properties/answers/items/properties/captured/properties/channel/type", keyword: "type", params: { type: "integer" }, message: "must be integer", schema: schema11.properties.answers.items.properties.captured.properties.channel.type, parentSchema: schema11.properties.answers.items.properties.captured.properties.channel, data: data9 };
                    if (vErrors === null) {
                      vErrors = [err22];
                    } else {
                      vErrors.push(err22);
                    }
                    errors++;
                  }
                  if (typeof data9 == "number" && isFinite(data9)) {
                    if (data9 > 1e3 || isNaN(data9)) {
                      const err23 = { instancePath: instancePath + "/answers/" + i0 + "/captured/channel", schemaPath: "#/properties/answers/items/properties/captured/properties/channel/maximum", keyword: "maximum", params: { comparison: "<=", limit: 1e3 }, message: "must be <= 1000", schema: 1e3, parentSchema: schema11.properties.answers.items.properties.captured.properties.channel, data: data9 };
                      if (vErrors === null) {
                        vErrors = [err23];
                      } else {
                        vErrors.push(err23);
                      }
                      errors++;
                    }
                    if (data9 < 1 || isNaN(data9)) {
                      const err24 = { instancePath: instancePath + "/answers/" + i0 + "/captured/channel", schemaPath: "#/properties/answers/items/properties/captured/properties/channel/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 }, message: "must be >= 1", schema: 1, parentSchema: schema11.properties.answers.items.properties.captured.properties.channel, data: data9 };
                      if (vErrors === null) {
                        vErrors = [err24];
                      } else {
                        vErrors.push(err24);
                      }
                      errors++;
                    }
                  }
                }
              } else {
                const err25 = { instancePath: instancePath + "/answers/" + i0 + "/captured", schemaPath: "#/properties/answers/items/properties/captured/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.answers.items.properties.captured.type, parentSchema: schema11.properties.answers.items.properties.captured, data: data5 };
                if (vErrors === null) {
                  vErrors = [err25];
                } else {
                  vErrors.push(err25);
                }
                errors++;
              }
            }
            if (data2.watched !== void 0) {
              let data10 = data2.watched;
              if (typeof data10 === "string") {
                if (func3(data10) > 2e3) {
                  const err26 = { instancePath: instancePath + "/answers/" + i0 + "/watched", schemaPath: "#/properties/answers/items/properties/watched/maxLength", keyword: "maxLength", params: { limit: 2e3 }, message: "must NOT have more than 2000 characters", schema: 2e3, parentSchema: schema11.properties.answers.items.properties.watched, data: data10 };
                  if (vErrors === null) {
                    vErrors = [err26];
                  } else {
                    vErrors.push(err26);
                  }
                  errors++;
                }
                if (func3(data10) < 1) {
                  const err27 = { instancePath: instancePath + "/answers/" + i0 + "/watched", schemaPath: "#/properties/answers/items/properties/watched/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.answers.items.properties.watched, data: data10 };
                  if (vErrors === null) {
                    vErrors = [err27];
                  } else {
                    vErrors.push(err27);
                  }
                  errors++;
                }
              } else {
                const err28 = { instancePath: instancePath + "/answers/" + i0 + "/watched", schemaPath: "#/properties/answers/items/properties/watched/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.answers.items.properties.watched.type, parentSchema: schema11.properties.answers.items.properties.watched, data: data10 };
                if (vErrors === null) {
                  vErrors = [err28];
                } else {
                  vErrors.push(err28);
                }
                errors++;
              }
            }
            if (data2.choose !== void 0) {
              let data11 = data2.choose;
              if (typeof data11 !== "string") {
                const err29 = { instancePath: instancePath + "/answers/" + i0 + "/choose", schemaPath: "#/properties/answers/items/properties/choose/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.answers.items.properties.choose.type, parentSchema: schema11.properties.answers.items.properties.choose, data: data11 };
                if (vErrors === null) {
                  vErrors = [err29];
                } else {
                  vErrors.push(err29);
                }
                errors++;
              }
            }
            if (data2.measure !== void 0) {
              let data12 = data2.measure;
              if (typeof data12 === "string") {
                if (func3(data12) > 200) {
                  const err30 = { instancePath: instancePath + "/answers/" + i0 + "/measure", schemaPath: "#/properties/answers/items/properties/measure/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema11.properties.answers.items.properties.measure, data: data12 };
                  if (vErrors === null) {
                    vErrors = [err30];
                  } else {
                    vErrors.push(err30);
                  }
                  errors++;
                }
                if (func3(data12) < 1) {
                  const err31 = { instancePath: instancePath + "/answers/" + i0 + "/measure", schemaPath: "#/properties/answers/items/properties/measure/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.answers.items.properties.measure, data: data12 };
                  if (vErrors === null) {
                    vErrors = [err31];
                  } else {
                    vErrors.push(err31);
                  }
                  errors++;
                }
              } else {
                const err32 = { instancePath: instancePath + "/answers/" + i0 + "/measure", schemaPath: "#/properties/answers/items/properties/measure/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.answers.items.properties.measure.type, parentSchema: schema11.properties.answers.items.properties.measure, data: data12 };
                if (vErrors === null) {
                  vErrors = [err32];
                } else {
                  vErrors.push(err32);
                }
                errors++;
              }
            }
            if (data2.test !== void 0) {
              let data13 = data2.test;
              if (typeof data13 === "string") {
                if (func3(data13) > 200) {
                  const err33 = { instancePath: instancePath + "/answers/" + i0 + "/test", schemaPath: "#/properties/answers/items/properties/test/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema11.properties.answers.items.properties.test, data: data13 };
                  if (vErrors === null) {
                    vErrors = [err33];
                  } else {
                    vErrors.push(err33);
                  }
                  errors++;
                }
              } else {
                const err34 = { instancePath: instancePath + "/answers/" + i0 + "/test", schemaPath: "#/properties/answers/items/properties/test/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.answers.items.properties.test.type, parentSchema: schema11.properties.answers.items.properties.test, data: data13 };
                if (vErrors === null) {
                  vErrors = [err34];
                } else {
                  vErrors.push(err34);
                }
                errors++;
              }
            }
            if (data2.state !== void 0) {
              let data14 = data2.state;
              if (!(data14 === "key-off" || data14 === "key-on" || data14 === "cranking" || data14 === "running")) {
                const err35 = { instancePath: instancePath + "/answers/" + i0 + "/state", schemaPath: "#/properties/answers/items/properties/state/enum", keyword: "enum", params: { allowedValues: schema11.properties.answers.items.properties.state.enum }, message: "must be equal to one of the allowed values", schema: schema11.properties.answers.items.properties.state.enum, parentSchema: schema11.properties.answers.items.properties.state, data: data14 };
                if (vErrors === null) {
                  vErrors = [err35];
                } else {
                  vErrors.push(err35);
                }
                errors++;
              }
            }
            if (data2.unplug !== void 0) {
              let data15 = data2.unplug;
              if (Array.isArray(data15)) {
                if (data15.length > 20) {
                  const err36 = { instancePath: instancePath + "/answers/" + i0 + "/unplug", schemaPath: "#/properties/answers/items/properties/unplug/maxItems", keyword: "maxItems", params: { limit: 20 }, message: "must NOT have more than 20 items", schema: 20, parentSchema: schema11.properties.answers.items.properties.unplug, data: data15 };
                  if (vErrors === null) {
                    vErrors = [err36];
                  } else {
                    vErrors.push(err36);
                  }
                  errors++;
                }
                const len1 = data15.length;
                for (let i1 = 0; i1 < len1; i1++) {
                  let data16 = data15[i1];
                  if (typeof data16 === "string") {
                    if (func3(data16) > 100) {
                      const err37 = { instancePath: instancePath + "/answers/" + i0 + "/unplug/" + i1, schemaPath: "#/properties/answers/items/properties/unplug/items/maxLength", keyword: "maxLength", params: { limit: 100 }, message: "must NOT have more than 100 characters", schema: 100, parentSchema: schema11.properties.answers.items.properties.unplug.items, data: data16 };
                      if (vErrors === null) {
                        vErrors = [err37];
                      } else {
                        vErrors.push(err37);
                      }
                      errors++;
                    }
                  } else {
                    const err38 = { instancePath: instancePath + "/answers/" + i0 + "/unplug/" + i1, schemaPath: "#/properties/answers/items/properties/unplug/items/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.answers.items.properties.unplug.items.type, parentSchema: schema11.properties.answers.items.properties.unplug.items, data: data16 };
                    if (vErrors === null) {
                      vErrors = [err38];
                    } else {
                      vErrors.push(err38);
                    }
                    errors++;
                  }
                }
              } else {
                const err39 = { instancePath: instancePath + "/answers/" + i0 + "/unplug", schemaPath: "#/properties/answers/items/properties/unplug/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema11.properties.answers.items.properties.unplug.type, parentSchema: schema11.properties.answers.items.properties.unplug, data: data15 };
                if (vErrors === null) {
                  vErrors = [err39];
                } else {
                  vErrors.push(err39);
                }
                errors++;
              }
            }
            if (data2.bridges !== void 0) {
              let data17 = data2.bridges;
              if (Array.isArray(data17)) {
                if (data17.length > 6) {
                  const err40 = { instancePath: instancePath + "/answers/" + i0 + "/bridges", schemaPath: "#/properties/answers/items/properties/bridges/maxItems", keyword: "maxItems", params: { limit: 6 }, message: "must NOT have more than 6 items", schema: 6, parentSchema: schema11.properties.answers.items.properties.bridges, data: data17 };
                  if (vErrors === null) {
                    vErrors = [err40];
                  } else {
                    vErrors.push(err40);
                  }
                  errors++;
                }
                const len2 = data17.length;
                for (let i2 = 0; i2 < len2; i2++) {
                  let data18 = data17[i2];
                  if (typeof data18 === "string") {
                    if (func3(data18) > 200) {
                      const err41 = { instancePath: instancePath + "/answers/" + i0 + "/bridges/" + i2, schemaPath: "#/properties/answers/items/properties/bridges/items/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema11.properties.answers.items.properties.bridges.items, data: data18 };
                      if (vErrors === null) {
                        vErrors = [err41];
                      } else {
                        vErrors.push(err41);
                      }
                      errors++;
                    }
                  } else {
                    const err42 = { instancePath: instancePath + "/answers/" + i0 + "/bridges/" + i2, schemaPath: "#/properties/answers/items/properties/bridges/items/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.answers.items.properties.bridges.items.type, parentSchema: schema11.properties.answers.items.properties.bridges.items, data: data18 };
                    if (vErrors === null) {
                      vErrors = [err42];
                    } else {
                      vErrors.push(err42);
                    }
                    errors++;
                  }
                }
              } else {
                const err43 = { instancePath: instancePath + "/answers/" + i0 + "/bridges", schemaPath: "#/properties/answers/items/properties/bridges/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema11.properties.answers.items.properties.bridges.type, parentSchema: schema11.properties.answers.items.properties.bridges, data: data17 };
                if (vErrors === null) {
                  vErrors = [err43];
                } else {
                  vErrors.push(err43);
                }
                errors++;
              }
            }
            if (data2.spare !== void 0) {
              let data19 = data2.spare;
              if (typeof data19 !== "boolean") {
                const err44 = { instancePath: instancePath + "/answers/" + i0 + "/spare", schemaPath: "#/properties/answers/items/properties/spare/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean", schema: schema11.properties.answers.items.properties.spare.type, parentSchema: schema11.properties.answers.items.properties.spare, data: data19 };
                if (vErrors === null) {
                  vErrors = [err44];
                } else {
                  vErrors.push(err44);
                }
                errors++;
              }
            }
            if (data2.moving !== void 0) {
              let data20 = data2.moving;
              if (typeof data20 !== "boolean") {
                const err45 = { instancePath: instancePath + "/answers/" + i0 + "/moving", schemaPath: "#/properties/answers/items/properties/moving/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean", schema: schema11.properties.answers.items.properties.moving.type, parentSchema: schema11.properties.answers.items.properties.moving, data: data20 };
                if (vErrors === null) {
                  vErrors = [err45];
                } else {
                  vErrors.push(err45);
                }
                errors++;
              }
            }
            if (data2.wiggle !== void 0) {
              let data21 = data2.wiggle;
              if (typeof data21 !== "boolean") {
                const err46 = { instancePath: instancePath + "/answers/" + i0 + "/wiggle", schemaPath: "#/properties/answers/items/properties/wiggle/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean", schema: schema11.properties.answers.items.properties.wiggle.type, parentSchema: schema11.properties.answers.items.properties.wiggle, data: data21 };
                if (vErrors === null) {
                  vErrors = [err46];
                } else {
                  vErrors.push(err46);
                }
                errors++;
              }
            }
            if (data2.made !== void 0) {
              let data22 = data2.made;
              if (typeof data22 === "string") {
                if (!pattern1.test(data22)) {
                  const err47 = { instancePath: instancePath + "/answers/" + i0 + "/made", schemaPath: "#/properties/answers/items/properties/made/pattern", keyword: "pattern", params: { pattern: "^(before the job|([01][0-9]|2[0-3]):[0-5][0-9])$" }, message: 'must match pattern "^(before the job|([01][0-9]|2[0-3]):[0-5][0-9])$"', schema: "^(before the job|([01][0-9]|2[0-3]):[0-5][0-9])$", parentSchema: schema11.properties.answers.items.properties.made, data: data22 };
                  if (vErrors === null) {
                    vErrors = [err47];
                  } else {
                    vErrors.push(err47);
                  }
                  errors++;
                }
              } else {
                const err48 = { instancePath: instancePath + "/answers/" + i0 + "/made", schemaPath: "#/properties/answers/items/properties/made/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.answers.items.properties.made.type, parentSchema: schema11.properties.answers.items.properties.made, data: data22 };
                if (vErrors === null) {
                  vErrors = [err48];
                } else {
                  vErrors.push(err48);
                }
                errors++;
              }
            }
            if (data2.aside !== void 0) {
              let data23 = data2.aside;
              if (typeof data23 !== "boolean") {
                const err49 = { instancePath: instancePath + "/answers/" + i0 + "/aside", schemaPath: "#/properties/answers/items/properties/aside/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean", schema: schema11.properties.answers.items.properties.aside.type, parentSchema: schema11.properties.answers.items.properties.aside, data: data23 };
                if (vErrors === null) {
                  vErrors = [err49];
                } else {
                  vErrors.push(err49);
                }
                errors++;
              }
            }
            if (data2.connector !== void 0) {
              let data24 = data2.connector;
              if (typeof data24 === "string") {
                if (func3(data24) > 100) {
                  const err50 = { instancePath: instancePath + "/answers/" + i0 + "/connector", schemaPath: "#/properties/answers/items/properties/connector/maxLength", keyword: "maxLength", params: { limit: 100 }, message: "must NOT have more than 100 characters", schema: 100, parentSchema: schema11.properties.answers.items.properties.connector, data: data24 };
                  if (vErrors === null) {
                    vErrors = [err50];
                  } else {
                    vErrors.push(err50);
                  }
                  errors++;
                }
                if (func3(data24) < 1) {
                  const err51 = { instancePath: instancePath + "/answers/" + i0 + "/connector", schemaPath: "#/properties/answers/items/properties/connector/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.answers.items.properties.connector, data: data24 };
                  if (vErrors === null) {
                    vErrors = [err51];
                  } else {
                    vErrors.push(err51);
                  }
                  errors++;
                }
              } else {
                const err52 = { instancePath: instancePath + "/answers/" + i0 + "/connector", schemaPath: "#/properties/answers/items/properties/connector/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.answers.items.properties.connector.type, parentSchema: schema11.properties.answers.items.properties.connector, data: data24 };
                if (vErrors === null) {
                  vErrors = [err52];
                } else {
                  vErrors.push(err52);
                }
                errors++;
              }
            }
            if (data2["no-state"] !== void 0) {
              let data25 = data2["no-state"];
              if (!(data25 === "key-on" || data25 === "cranking" || data25 === "running")) {
                const err53 = { instancePath: instancePath + "/answers/" + i0 + "/no-state", schemaPath: "#/properties/answers/items/properties/no-state/enum", keyword: "enum", params: { allowedValues: schema11.properties.answers.items.properties["no-state"].enum }, message: "must be equal to one of the allowed values", schema: schema11.properties.answers.items.properties["no-state"].enum, parentSchema: schema11.properties.answers.items.properties["no-state"], data: data25 };
                if (vErrors === null) {
                  vErrors = [err53];
                } else {
                  vErrors.push(err53);
                }
                errors++;
              }
            }
            if (data2.faults !== void 0) {
              let data26 = data2.faults;
              if (Array.isArray(data26)) {
                if (data26.length > 50) {
                  const err54 = { instancePath: instancePath + "/answers/" + i0 + "/faults", schemaPath: "#/properties/answers/items/properties/faults/maxItems", keyword: "maxItems", params: { limit: 50 }, message: "must NOT have more than 50 items", schema: 50, parentSchema: schema11.properties.answers.items.properties.faults, data: data26 };
                  if (vErrors === null) {
                    vErrors = [err54];
                  } else {
                    vErrors.push(err54);
                  }
                  errors++;
                }
                if (data26.length < 1) {
                  const err55 = { instancePath: instancePath + "/answers/" + i0 + "/faults", schemaPath: "#/properties/answers/items/properties/faults/minItems", keyword: "minItems", params: { limit: 1 }, message: "must NOT have fewer than 1 items", schema: 1, parentSchema: schema11.properties.answers.items.properties.faults, data: data26 };
                  if (vErrors === null) {
                    vErrors = [err55];
                  } else {
                    vErrors.push(err55);
                  }
                  errors++;
                }
                const len3 = data26.length;
                for (let i3 = 0; i3 < len3; i3++) {
                  let data27 = data26[i3];
                  if (typeof data27 === "string") {
                    if (func3(data27) > 200) {
                      const err56 = { instancePath: instancePath + "/answers/" + i0 + "/faults/" + i3, schemaPath: "#/properties/answers/items/properties/faults/items/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema11.properties.answers.items.properties.faults.items, data: data27 };
                      if (vErrors === null) {
                        vErrors = [err56];
                      } else {
                        vErrors.push(err56);
                      }
                      errors++;
                    }
                  } else {
                    const err57 = { instancePath: instancePath + "/answers/" + i0 + "/faults/" + i3, schemaPath: "#/properties/answers/items/properties/faults/items/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.answers.items.properties.faults.items.type, parentSchema: schema11.properties.answers.items.properties.faults.items, data: data27 };
                    if (vErrors === null) {
                      vErrors = [err57];
                    } else {
                      vErrors.push(err57);
                    }
                    errors++;
                  }
                }
              } else {
                const err58 = { instancePath: instancePath + "/answers/" + i0 + "/faults", schemaPath: "#/properties/answers/items/properties/faults/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema11.properties.answers.items.properties.faults.type, parentSchema: schema11.properties.answers.items.properties.faults, data: data26 };
                if (vErrors === null) {
                  vErrors = [err58];
                } else {
                  vErrors.push(err58);
                }
                errors++;
              }
            }
            if (data2.words !== void 0) {
              let data28 = data2.words;
              if (typeof data28 === "string") {
                if (func3(data28) > 2e3) {
                  const err59 = { instancePath: instancePath + "/answers/" + i0 + "/words", schemaPath: "#/properties/answers/items/properties/words/maxLength", keyword: "maxLength", params: { limit: 2e3 }, message: "must NOT have more than 2000 characters", schema: 2e3, parentSchema: schema11.properties.answers.items.properties.words, data: data28 };
                  if (vErrors === null) {
                    vErrors = [err59];
                  } else {
                    vErrors.push(err59);
                  }
                  errors++;
                }
                if (func3(data28) < 1) {
                  const err60 = { instancePath: instancePath + "/answers/" + i0 + "/words", schemaPath: "#/properties/answers/items/properties/words/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.answers.items.properties.words, data: data28 };
                  if (vErrors === null) {
                    vErrors = [err60];
                  } else {
                    vErrors.push(err60);
                  }
                  errors++;
                }
              } else {
                const err61 = { instancePath: instancePath + "/answers/" + i0 + "/words", schemaPath: "#/properties/answers/items/properties/words/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.answers.items.properties.words.type, parentSchema: schema11.properties.answers.items.properties.words, data: data28 };
                if (vErrors === null) {
                  vErrors = [err61];
                } else {
                  vErrors.push(err61);
                }
                errors++;
              }
            }
            if (data2.known !== void 0) {
              let data29 = data2.known;
              if (data29 && typeof data29 == "object" && !Array.isArray(data29)) {
                if (data29.what === void 0) {
                  const err62 = { instancePath: instancePath + "/answers/" + i0 + "/known", schemaPath: "#/properties/answers/items/properties/known/required", keyword: "required", params: { missingProperty: "what" }, message: "must have required property 'what'", schema: schema11.properties.answers.items.properties.known.required, parentSchema: schema11.properties.answers.items.properties.known, data: data29 };
                  if (vErrors === null) {
                    vErrors = [err62];
                  } else {
                    vErrors.push(err62);
                  }
                  errors++;
                }
                if (data29.is === void 0) {
                  const err63 = { instancePath: instancePath + "/answers/" + i0 + "/known", schemaPath: "#/properties/answers/items/properties/known/required", keyword: "required", params: { missingProperty: "is" }, message: "must have required property 'is'", schema: schema11.properties.answers.items.properties.known.required, parentSchema: schema11.properties.answers.items.properties.known, data: data29 };
                  if (vErrors === null) {
                    vErrors = [err63];
                  } else {
                    vErrors.push(err63);
                  }
                  errors++;
                }
                if (data29.from === void 0) {
                  const err64 = { instancePath: instancePath + "/answers/" + i0 + "/known", schemaPath: "#/properties/answers/items/properties/known/required", keyword: "required", params: { missingProperty: "from" }, message: "must have required property 'from'", schema: schema11.properties.answers.items.properties.known.required, parentSchema: schema11.properties.answers.items.properties.known, data: data29 };
                  if (vErrors === null) {
                    vErrors = [err64];
                  } else {
                    vErrors.push(err64);
                  }
                  errors++;
                }
                for (const key3 in data29) {
                  if (!(key3 === "what" || key3 === "is" || key3 === "from")) {
                    const err65 = { instancePath: instancePath + "/answers/" + i0 + "/known", schemaPath: "#/properties/answers/items/properties/known/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key3 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11.properties.answers.items.properties.known, data: data29 };
                    if (vErrors === null) {
                      vErrors = [err65];
                    } else {
                      vErrors.push(err65);
                    }
                    errors++;
                  }
                }
                if (data29.what !== void 0) {
                  let data30 = data29.what;
                  if (typeof data30 === "string") {
                    if (func3(data30) > 200) {
                      const err66 = { instancePath: instancePath + "/answers/" + i0 + "/known/what", schemaPath: "#/properties/answers/items/properties/known/properties/what/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema11.properties.answers.items.properties.known.properties.what, data: data30 };
                      if (vErrors === null) {
                        vErrors = [err66];
                      } else {
                        vErrors.push(err66);
                      }
                      errors++;
                    }
                    if (func3(data30) < 1) {
                      const err67 = { instancePath: instancePath + "/answers/" + i0 + "/known/what", schemaPath: "#/properties/answers/items/properties/known/properties/what/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.answers.items.properties.known.properties.what, data: data30 };
                      if (vErrors === null) {
                        vErrors = [err67];
                      } else {
                        vErrors.push(err67);
                      }
                      errors++;
                    }
                  } else {
                    const err68 = { instancePath: instancePath + "/answers/" + i0 + "/known/what", schemaPath: "#/properties/answers/items/properties/known/properties/what/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.answers.items.properties.known.properties.what.type, parentSchema: schema11.properties.answers.items.properties.known.properties.what, data: data30 };
                    if (vErrors === null) {
                      vErrors = [err68];
                    } else {
                      vErrors.push(err68);
                    }
                    errors++;
                  }
                }
                if (data29.is !== void 0) {
                  let data31 = data29.is;
                  if (typeof data31 === "string") {
                    if (func3(data31) > 400) {
                      const err69 = { instancePath: instancePath + "/answers/" + i0 + "/known/is", schemaPath: "#/properties/answers/items/properties/known/properties/is/maxLength", keyword: "maxLength", params: { limit: 400 }, message: "must NOT have more than 400 characters", schema: 400, parentSchema: schema11.properties.answers.items.properties.known.properties.is, data: data31 };
                      if (vErrors === null) {
                        vErrors = [err69];
                      } else {
                        vErrors.push(err69);
                      }
                      errors++;
                    }
                    if (func3(data31) < 1) {
                      const err70 = { instancePath: instancePath + "/answers/" + i0 + "/known/is", schemaPath: "#/properties/answers/items/properties/known/properties/is/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.answers.items.properties.known.properties.is, data: data31 };
                      if (vErrors === null) {
                        vErrors = [err70];
                      } else {
                        vErrors.push(err70);
                      }
                      errors++;
                    }
                  } else {
                    const err71 = { instancePath: instancePath + "/answers/" + i0 + "/known/is", schemaPath: "#/properties/answers/items/properties/known/properties/is/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.answers.items.properties.known.properties.is.type, parentSchema: schema11.properties.answers.items.properties.known.properties.is, data: data31 };
                    if (vErrors === null) {
                      vErrors = [err71];
                    } else {
                      vErrors.push(err71);
                    }
                    errors++;
                  }
                }
                if (data29.from !== void 0) {
                  let data32 = data29.from;
                  if (typeof data32 === "string") {
                    if (func3(data32) > 300) {
                      const err72 = { instancePath: instancePath + "/answers/" + i0 + "/known/from", schemaPath: "#/properties/answers/items/properties/known/properties/from/maxLength", keyword: "maxLength", params: { limit: 300 }, message: "must NOT have more than 300 characters", schema: 300, parentSchema: schema11.properties.answers.items.properties.known.properties.from, data: data32 };
                      if (vErrors === null) {
                        vErrors = [err72];
                      } else {
                        vErrors.push(err72);
                      }
                      errors++;
                    }
                    if (func3(data32) < 1) {
                      const err73 = { instancePath: instancePath + "/answers/" + i0 + "/known/from", schemaPath: "#/properties/answers/items/properties/known/properties/from/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.answers.items.properties.known.properties.from, data: data32 };
                      if (vErrors === null) {
                        vErrors = [err73];
                      } else {
                        vErrors.push(err73);
                      }
                      errors++;
                    }
                  } else {
                    const err74 = { instancePath: instancePath + "/answers/" + i0 + "/known/from", schemaPath: "#/properties/answers/items/properties/known/properties/from/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.answers.items.properties.known.properties.from.type, parentSchema: schema11.properties.answers.items.properties.known.properties.from, data: data32 };
                    if (vErrors === null) {
                      vErrors = [err74];
                    } else {
                      vErrors.push(err74);
                    }
                    errors++;
                  }
                }
              } else {
                const err75 = { instancePath: instancePath + "/answers/" + i0 + "/known", schemaPath: "#/properties/answers/items/properties/known/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.answers.items.properties.known.type, parentSchema: schema11.properties.answers.items.properties.known, data: data29 };
                if (vErrors === null) {
                  vErrors = [err75];
                } else {
                  vErrors.push(err75);
                }
                errors++;
              }
            }
            if (data2.place !== void 0) {
              let data33 = data2.place;
              if (data33 && typeof data33 == "object" && !Array.isArray(data33)) {
                if (data33.wire === void 0) {
                  const err76 = { instancePath: instancePath + "/answers/" + i0 + "/place", schemaPath: "#/properties/answers/items/properties/place/required", keyword: "required", params: { missingProperty: "wire" }, message: "must have required property 'wire'", schema: schema11.properties.answers.items.properties.place.required, parentSchema: schema11.properties.answers.items.properties.place, data: data33 };
                  if (vErrors === null) {
                    vErrors = [err76];
                  } else {
                    vErrors.push(err76);
                  }
                  errors++;
                }
                if (data33.touches === void 0) {
                  const err77 = { instancePath: instancePath + "/answers/" + i0 + "/place", schemaPath: "#/properties/answers/items/properties/place/required", keyword: "required", params: { missingProperty: "touches" }, message: "must have required property 'touches'", schema: schema11.properties.answers.items.properties.place.required, parentSchema: schema11.properties.answers.items.properties.place, data: data33 };
                  if (vErrors === null) {
                    vErrors = [err77];
                  } else {
                    vErrors.push(err77);
                  }
                  errors++;
                }
                if (data33.drops === void 0) {
                  const err78 = { instancePath: instancePath + "/answers/" + i0 + "/place", schemaPath: "#/properties/answers/items/properties/place/required", keyword: "required", params: { missingProperty: "drops" }, message: "must have required property 'drops'", schema: schema11.properties.answers.items.properties.place.required, parentSchema: schema11.properties.answers.items.properties.place, data: data33 };
                  if (vErrors === null) {
                    vErrors = [err78];
                  } else {
                    vErrors.push(err78);
                  }
                  errors++;
                }
                if (data33.unplugged === void 0) {
                  const err79 = { instancePath: instancePath + "/answers/" + i0 + "/place", schemaPath: "#/properties/answers/items/properties/place/required", keyword: "required", params: { missingProperty: "unplugged" }, message: "must have required property 'unplugged'", schema: schema11.properties.answers.items.properties.place.required, parentSchema: schema11.properties.answers.items.properties.place, data: data33 };
                  if (vErrors === null) {
                    vErrors = [err79];
                  } else {
                    vErrors.push(err79);
                  }
                  errors++;
                }
                for (const key4 in data33) {
                  if (!(key4 === "wire" || key4 === "touches" || key4 === "from" || key4 === "to" || key4 === "drops" || key4 === "unplugged")) {
                    const err80 = { instancePath: instancePath + "/answers/" + i0 + "/place", schemaPath: "#/properties/answers/items/properties/place/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key4 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11.properties.answers.items.properties.place, data: data33 };
                    if (vErrors === null) {
                      vErrors = [err80];
                    } else {
                      vErrors.push(err80);
                    }
                    errors++;
                  }
                }
                if (data33.wire !== void 0) {
                  let data34 = data33.wire;
                  if (typeof data34 === "string") {
                    if (func3(data34) > 60) {
                      const err81 = { instancePath: instancePath + "/answers/" + i0 + "/place/wire", schemaPath: "#/properties/answers/items/properties/place/properties/wire/maxLength", keyword: "maxLength", params: { limit: 60 }, message: "must NOT have more than 60 characters", schema: 60, parentSchema: schema11.properties.answers.items.properties.place.properties.wire, data: data34 };
                      if (vErrors === null) {
                        vErrors = [err81];
                      } else {
                        vErrors.push(err81);
                      }
                      errors++;
                    }
                    if (func3(data34) < 1) {
                      const err82 = { instancePath: instancePath + "/answers/" + i0 + "/place/wire", schemaPath: "#/properties/answers/items/properties/place/properties/wire/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.answers.items.properties.place.properties.wire, data: data34 };
                      if (vErrors === null) {
                        vErrors = [err82];
                      } else {
                        vErrors.push(err82);
                      }
                      errors++;
                    }
                  } else {
                    const err83 = { instancePath: instancePath + "/answers/" + i0 + "/place/wire", schemaPath: "#/properties/answers/items/properties/place/properties/wire/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.answers.items.properties.place.properties.wire.type, parentSchema: schema11.properties.answers.items.properties.place.properties.wire, data: data34 };
                    if (vErrors === null) {
                      vErrors = [err83];
                    } else {
                      vErrors.push(err83);
                    }
                    errors++;
                  }
                }
                if (data33.touches !== void 0) {
                  let data35 = data33.touches;
                  if (typeof data35 === "string") {
                    if (func3(data35) > 60) {
                      const err84 = { instancePath: instancePath + "/answers/" + i0 + "/place/touches", schemaPath: "#/properties/answers/items/properties/place/properties/touches/maxLength", keyword: "maxLength", params: { limit: 60 }, message: "must NOT have more than 60 characters", schema: 60, parentSchema: schema11.properties.answers.items.properties.place.properties.touches, data: data35 };
                      if (vErrors === null) {
                        vErrors = [err84];
                      } else {
                        vErrors.push(err84);
                      }
                      errors++;
                    }
                    if (func3(data35) < 1) {
                      const err85 = { instancePath: instancePath + "/answers/" + i0 + "/place/touches", schemaPath: "#/properties/answers/items/properties/place/properties/touches/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.answers.items.properties.place.properties.touches, data: data35 };
                      if (vErrors === null) {
                        vErrors = [err85];
                      } else {
                        vErrors.push(err85);
                      }
                      errors++;
                    }
                  } else {
                    const err86 = { instancePath: instancePath + "/answers/" + i0 + "/place/touches", schemaPath: "#/properties/answers/items/properties/place/properties/touches/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.answers.items.properties.place.properties.touches.type, parentSchema: schema11.properties.answers.items.properties.place.properties.touches, data: data35 };
                    if (vErrors === null) {
                      vErrors = [err86];
                    } else {
                      vErrors.push(err86);
                    }
                    errors++;
                  }
                }
                if (data33.from !== void 0) {
                  let data36 = data33.from;
                  if (typeof data36 === "string") {
                    if (func3(data36) > 200) {
                      const err87 = { instancePath: instancePath + "/answers/" + i0 + "/place/from", schemaPath: "#/properties/answers/items/properties/place/properties/from/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema11.properties.answers.items.properties.place.properties.from, data: data36 };
                      if (vErrors === null) {
                        vErrors = [err87];
                      } else {
                        vErrors.push(err87);
                      }
                      errors++;
                    }
                    if (func3(data36) < 1) {
                      const err88 = { instancePath: instancePath + "/answers/" + i0 + "/place/from", schemaPath: "#/properties/answers/items/properties/place/properties/from/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.answers.items.properties.place.properties.from, data: data36 };
                      if (vErrors === null) {
                        vErrors = [err88];
                      } else {
                        vErrors.push(err88);
                      }
                      errors++;
                    }
                  } else {
                    const err89 = { instancePath: instancePath + "/answers/" + i0 + "/place/from", schemaPath: "#/properties/answers/items/properties/place/properties/from/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.answers.items.properties.place.properties.from.type, parentSchema: schema11.properties.answers.items.properties.place.properties.from, data: data36 };
                    if (vErrors === null) {
                      vErrors = [err89];
                    } else {
                      vErrors.push(err89);
                    }
                    errors++;
                  }
                }
                if (data33.to !== void 0) {
                  let data37 = data33.to;
                  if (typeof data37 === "string") {
                    if (func3(data37) > 200) {
                      const err90 = { instancePath: instancePath + "/answers/" + i0 + "/place/to", schemaPath: "#/properties/answers/items/properties/place/properties/to/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema11.properties.answers.items.properties.place.properties.to, data: data37 };
                      if (vErrors === null) {
                        vErrors = [err90];
                      } else {
                        vErrors.push(err90);
                      }
                      errors++;
                    }
                    if (func3(data37) < 1) {
                      const err91 = { instancePath: instancePath + "/answers/" + i0 + "/place/to", schemaPath: "#/properties/answers/items/properties/place/properties/to/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.answers.items.properties.place.properties.to, data: data37 };
                      if (vErrors === null) {
                        vErrors = [err91];
                      } else {
                        vErrors.push(err91);
                      }
                      errors++;
                    }
                  } else {
                    const err92 = { instancePath: instancePath + "/answers/" + i0 + "/place/to", schemaPath: "#/properties/answers/items/properties/place/properties/to/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.answers.items.properties.place.properties.to.type, parentSchema: schema11.properties.answers.items.properties.place.properties.to, data: data37 };
                    if (vErrors === null) {
                      vErrors = [err92];
                    } else {
                      vErrors.push(err92);
                    }
                    errors++;
                  }
                }
                if (data33.drops !== void 0) {
                  let data38 = data33.drops;
                  if (typeof data38 === "string") {
                    if (func3(data38) > 200) {
                      const err93 = { instancePath: instancePath + "/answers/" + i0 + "/place/drops", schemaPath: "#/properties/answers/items/properties/place/properties/drops/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema11.properties.answers.items.properties.place.properties.drops, data: data38 };
                      if (vErrors === null) {
                        vErrors = [err93];
                      } else {
                        vErrors.push(err93);
                      }
                      errors++;
                    }
                    if (func3(data38) < 1) {
                      const err94 = { instancePath: instancePath + "/answers/" + i0 + "/place/drops", schemaPath: "#/properties/answers/items/properties/place/properties/drops/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.answers.items.properties.place.properties.drops, data: data38 };
                      if (vErrors === null) {
                        vErrors = [err94];
                      } else {
                        vErrors.push(err94);
                      }
                      errors++;
                    }
                  } else {
                    const err95 = { instancePath: instancePath + "/answers/" + i0 + "/place/drops", schemaPath: "#/properties/answers/items/properties/place/properties/drops/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.answers.items.properties.place.properties.drops.type, parentSchema: schema11.properties.answers.items.properties.place.properties.drops, data: data38 };
                    if (vErrors === null) {
                      vErrors = [err95];
                    } else {
                      vErrors.push(err95);
                    }
                    errors++;
                  }
                }
                if (data33.unplugged !== void 0) {
                  let data39 = data33.unplugged;
                  if (Array.isArray(data39)) {
                    if (data39.length > 20) {
                      const err96 = { instancePath: instancePath + "/answers/" + i0 + "/place/unplugged", schemaPath: "#/properties/answers/items/properties/place/properties/unplugged/maxItems", keyword: "maxItems", params: { limit: 20 }, message: "must NOT have more than 20 items", schema: 20, parentSchema: schema11.properties.answers.items.properties.place.properties.unplugged, data: data39 };
                      if (vErrors === null) {
                        vErrors = [err96];
                      } else {
                        vErrors.push(err96);
                      }
                      errors++;
                    }
                    const len4 = data39.length;
                    for (let i4 = 0; i4 < len4; i4++) {
                      let data40 = data39[i4];
                      if (typeof data40 === "string") {
                        if (func3(data40) > 100) {
                          const err97 = { instancePath: instancePath + "/answers/" + i0 + "/place/unplugged/" + i4, schemaPath: "#/properties/answers/items/properties/place/properties/unplugged/items/maxLength", keyword: "maxLength", params: { limit: 100 }, message: "must NOT have more than 100 characters", schema: 100, parentSchema: schema11.properties.answers.items.properties.place.properties.unplugged.items, data: data40 };
                          if (vErrors === null) {
                            vErrors = [err97];
                          } else {
                            vErrors.push(err97);
                          }
                          errors++;
                        }
                      } else {
                        const err98 = { instancePath: instancePath + "/answers/" + i0 + "/place/unplugged/" + i4, schemaPath: "#/properties/answers/items/properties/place/properties/unplugged/items/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.answers.items.properties.place.properties.unplugged.items.type, parentSchema: schema11.properties.answers.items.properties.place.properties.unplugged.items, data: data40 };
                        if (vErrors === null) {
                          vErrors = [err98];
                        } else {
                          vErrors.push(err98);
                        }
                        errors++;
                      }
                    }
                  } else {
                    const err99 = { instancePath: instancePath + "/answers/" + i0 + "/place/unplugged", schemaPath: "#/properties/answers/items/properties/place/properties/unplugged/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema11.properties.answers.items.properties.place.properties.unplugged.type, parentSchema: schema11.properties.answers.items.properties.place.properties.unplugged, data: data39 };
                    if (vErrors === null) {
                      vErrors = [err99];
                    } else {
                      vErrors.push(err99);
                    }
                    errors++;
                  }
                }
              } else {
                const err100 = { instancePath: instancePath + "/answers/" + i0 + "/place", schemaPath: "#/properties/answers/items/properties/place/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.answers.items.properties.place.type, parentSchema: schema11.properties.answers.items.properties.place, data: data33 };
                if (vErrors === null) {
                  vErrors = [err100];
                } else {
                  vErrors.push(err100);
                }
                errors++;
              }
            }
            if (data2.done !== void 0) {
              let data41 = data2.done;
              if (true !== data41) {
                const err101 = { instancePath: instancePath + "/answers/" + i0 + "/done", schemaPath: "#/properties/answers/items/properties/done/const", keyword: "const", params: { allowedValue: true }, message: "must be equal to constant", schema: true, parentSchema: schema11.properties.answers.items.properties.done, data: data41 };
                if (vErrors === null) {
                  vErrors = [err101];
                } else {
                  vErrors.push(err101);
                }
                errors++;
              }
            }
            if (data2.cannot !== void 0) {
              let data42 = data2.cannot;
              if (typeof data42 === "string") {
                if (func3(data42) > 2e3) {
                  const err102 = { instancePath: instancePath + "/answers/" + i0 + "/cannot", schemaPath: "#/properties/answers/items/properties/cannot/maxLength", keyword: "maxLength", params: { limit: 2e3 }, message: "must NOT have more than 2000 characters", schema: 2e3, parentSchema: schema11.properties.answers.items.properties.cannot, data: data42 };
                  if (vErrors === null) {
                    vErrors = [err102];
                  } else {
                    vErrors.push(err102);
                  }
                  errors++;
                }
                if (func3(data42) < 1) {
                  const err103 = { instancePath: instancePath + "/answers/" + i0 + "/cannot", schemaPath: "#/properties/answers/items/properties/cannot/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.answers.items.properties.cannot, data: data42 };
                  if (vErrors === null) {
                    vErrors = [err103];
                  } else {
                    vErrors.push(err103);
                  }
                  errors++;
                }
              } else {
                const err104 = { instancePath: instancePath + "/answers/" + i0 + "/cannot", schemaPath: "#/properties/answers/items/properties/cannot/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.answers.items.properties.cannot.type, parentSchema: schema11.properties.answers.items.properties.cannot, data: data42 };
                if (vErrors === null) {
                  vErrors = [err104];
                } else {
                  vErrors.push(err104);
                }
                errors++;
              }
            }
            if (data2.acknowledge !== void 0) {
              let data43 = data2.acknowledge;
              if (true !== data43) {
                const err105 = { instancePath: instancePath + "/answers/" + i0 + "/acknowledge", schemaPath: "#/properties/answers/items/properties/acknowledge/const", keyword: "const", params: { allowedValue: true }, message: "must be equal to constant", schema: true, parentSchema: schema11.properties.answers.items.properties.acknowledge, data: data43 };
                if (vErrors === null) {
                  vErrors = [err105];
                } else {
                  vErrors.push(err105);
                }
                errors++;
              }
            }
            if (data2.note !== void 0) {
              let data44 = data2.note;
              if (typeof data44 === "string") {
                if (func3(data44) > 2e3) {
                  const err106 = { instancePath: instancePath + "/answers/" + i0 + "/note", schemaPath: "#/properties/answers/items/properties/note/maxLength", keyword: "maxLength", params: { limit: 2e3 }, message: "must NOT have more than 2000 characters", schema: 2e3, parentSchema: schema11.properties.answers.items.properties.note, data: data44 };
                  if (vErrors === null) {
                    vErrors = [err106];
                  } else {
                    vErrors.push(err106);
                  }
                  errors++;
                }
                if (func3(data44) < 1) {
                  const err107 = { instancePath: instancePath + "/answers/" + i0 + "/note", schemaPath: "#/properties/answers/items/properties/note/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.answers.items.properties.note, data: data44 };
                  if (vErrors === null) {
                    vErrors = [err107];
                  } else {
                    vErrors.push(err107);
                  }
                  errors++;
                }
              } else {
                const err108 = { instancePath: instancePath + "/answers/" + i0 + "/note", schemaPath: "#/properties/answers/items/properties/note/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.answers.items.properties.note.type, parentSchema: schema11.properties.answers.items.properties.note, data: data44 };
                if (vErrors === null) {
                  vErrors = [err108];
                } else {
                  vErrors.push(err108);
                }
                errors++;
              }
            }
            if (data2.back !== void 0) {
              let data45 = data2.back;
              if (true !== data45) {
                const err109 = { instancePath: instancePath + "/answers/" + i0 + "/back", schemaPath: "#/properties/answers/items/properties/back/const", keyword: "const", params: { allowedValue: true }, message: "must be equal to constant", schema: true, parentSchema: schema11.properties.answers.items.properties.back, data: data45 };
                if (vErrors === null) {
                  vErrors = [err109];
                } else {
                  vErrors.push(err109);
                }
                errors++;
              }
            }
            if (data2.pause !== void 0) {
              let data46 = data2.pause;
              if (true !== data46) {
                const err110 = { instancePath: instancePath + "/answers/" + i0 + "/pause", schemaPath: "#/properties/answers/items/properties/pause/const", keyword: "const", params: { allowedValue: true }, message: "must be equal to constant", schema: true, parentSchema: schema11.properties.answers.items.properties.pause, data: data46 };
                if (vErrors === null) {
                  vErrors = [err110];
                } else {
                  vErrors.push(err110);
                }
                errors++;
              }
            }
            if (data2.again !== void 0) {
              let data47 = data2.again;
              if (typeof data47 !== "string" && !(typeof data47 == "number" && isFinite(data47))) {
                const err111 = { instancePath: instancePath + "/answers/" + i0 + "/again", schemaPath: "#/properties/answers/items/properties/again/type", keyword: "type", params: { type: schema11.properties.answers.items.properties.again.type }, message: "must be string,number", schema: schema11.properties.answers.items.properties.again.type, parentSchema: schema11.properties.answers.items.properties.again, data: data47 };
                if (vErrors === null) {
                  vErrors = [err111];
                } else {
                  vErrors.push(err111);
                }
                errors++;
              }
            }
            if (data2.customer !== void 0) {
              let data48 = data2.customer;
              if (typeof data48 === "string") {
                if (func3(data48) > 2e3) {
                  const err112 = { instancePath: instancePath + "/answers/" + i0 + "/customer", schemaPath: "#/properties/answers/items/properties/customer/maxLength", keyword: "maxLength", params: { limit: 2e3 }, message: "must NOT have more than 2000 characters", schema: 2e3, parentSchema: schema11.properties.answers.items.properties.customer, data: data48 };
                  if (vErrors === null) {
                    vErrors = [err112];
                  } else {
                    vErrors.push(err112);
                  }
                  errors++;
                }
                if (func3(data48) < 1) {
                  const err113 = { instancePath: instancePath + "/answers/" + i0 + "/customer", schemaPath: "#/properties/answers/items/properties/customer/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.answers.items.properties.customer, data: data48 };
                  if (vErrors === null) {
                    vErrors = [err113];
                  } else {
                    vErrors.push(err113);
                  }
                  errors++;
                }
              } else {
                const err114 = { instancePath: instancePath + "/answers/" + i0 + "/customer", schemaPath: "#/properties/answers/items/properties/customer/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.answers.items.properties.customer.type, parentSchema: schema11.properties.answers.items.properties.customer, data: data48 };
                if (vErrors === null) {
                  vErrors = [err114];
                } else {
                  vErrors.push(err114);
                }
                errors++;
              }
            }
            if (data2.accept !== void 0) {
              let data49 = data2.accept;
              if (true !== data49) {
                const err115 = { instancePath: instancePath + "/answers/" + i0 + "/accept", schemaPath: "#/properties/answers/items/properties/accept/const", keyword: "const", params: { allowedValue: true }, message: "must be equal to constant", schema: true, parentSchema: schema11.properties.answers.items.properties.accept, data: data49 };
                if (vErrors === null) {
                  vErrors = [err115];
                } else {
                  vErrors.push(err115);
                }
                errors++;
              }
            }
            if (data2.conclude !== void 0) {
              let data50 = data2.conclude;
              if (true !== data50) {
                const err116 = { instancePath: instancePath + "/answers/" + i0 + "/conclude", schemaPath: "#/properties/answers/items/properties/conclude/const", keyword: "const", params: { allowedValue: true }, message: "must be equal to constant", schema: true, parentSchema: schema11.properties.answers.items.properties.conclude, data: data50 };
                if (vErrors === null) {
                  vErrors = [err116];
                } else {
                  vErrors.push(err116);
                }
                errors++;
              }
            }
          } else {
            const err117 = { instancePath: instancePath + "/answers/" + i0, schemaPath: "#/properties/answers/items/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.answers.items.type, parentSchema: schema11.properties.answers.items, data: data2 };
            if (vErrors === null) {
              vErrors = [err117];
            } else {
              vErrors.push(err117);
            }
            errors++;
          }
        }
      } else {
        const err118 = { instancePath: instancePath + "/answers", schemaPath: "#/properties/answers/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema11.properties.answers.type, parentSchema: schema11.properties.answers, data: data1 };
        if (vErrors === null) {
          vErrors = [err118];
        } else {
          vErrors.push(err118);
        }
        errors++;
      }
    }
  } else {
    const err119 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.type, parentSchema: schema11, data };
    if (vErrors === null) {
      vErrors = [err119];
    } else {
      vErrors.push(err119);
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
