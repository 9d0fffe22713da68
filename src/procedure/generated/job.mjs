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

// <stdin>
var validate = validate10;
var stdin_default = validate10;
var schema11 = { "$schema": "http://json-schema.org/draft-07/schema#", "$id": "job.schema.json", "title": "Job", "description": "One vehicle with one complaint. Everything but the complaint may be left out.", "type": "object", "required": ["complaint"], "additionalProperties": false, "properties": { "job": { "title": "Name", "description": "Short name in small letters; the file is named after it.", "type": "string", "pattern": "^[a-z][a-z0-9-]{0,60}$", "examples": ["blue-van"] }, "complaint": { "title": "Complaint", "description": "What the customer says, and when it happens.", "type": "string", "minLength": 1, "maxLength": 2e3 }, "procedure": { "title": "Procedure", "description": "The procedure to begin with.", "type": "string", "pattern": "^[a-z][a-z0-9-]{0,60}$" }, "codes": { "title": "Trouble codes", "description": "Codes that were read from the vehicle.", "type": "array", "maxItems": 60, "items": { "type": "string", "pattern": "^[PCBU][0-3][0-9A-F]{3}$", "examples": ["P0335"] } }, "position": { "title": "Position of the sensor", "description": "Which sensor it is, where the codes do not say it: a shaft, with its bank where there are several, or a wheel. Every sentence then names it.", "type": "string", "pattern": "^(crankshaft|((intake|exhaust) )?camshaft( bank [1-4])?|(left|right) (front|rear) wheel)$", "examples": ["exhaust camshaft bank 2", "right rear wheel"] }, "vehicle": { "title": "Vehicle", "description": "What is known of the vehicle.", "type": "object", "additionalProperties": false, "properties": { "words": { "title": "In words", "description": "What anyone would call it.", "type": "string", "maxLength": 200 }, "vin": { "title": "Vehicle identification number", "description": "Seventeen letters and digits; its check digit is checked.", "type": "string", "maxLength": 20 }, "plate": { "title": "Plate", "description": "Number plate.", "type": "string", "maxLength": 20 }, "odometer": { "title": "Odometer", "description": "As it stands on the dial, with its unit.", "type": "string", "maxLength": 30 }, "drive": { "title": "Drive", "description": "Hybrid and electric vehicles bring their own cautions. Left out it is not-stated, and a caution asks for it.", "enum": ["combustion", "hybrid", "electric", "not-stated"] } } }, "order": { "title": "Order number", "description": "The shop's own number for this job.", "type": "string", "maxLength": 60 }, "customer": { "title": "Customer", "description": "As the shop calls the customer.", "type": "string", "maxLength": 200 }, "earlier-repairs": { "title": "Earlier repairs", "description": "Work done before this job.", "type": "array", "maxItems": 40, "items": { "type": "object", "required": ["words"], "additionalProperties": false, "properties": { "words": { "title": "In words", "description": "What was done.", "type": "string", "minLength": 1, "maxLength": 300 }, "part": { "title": "Part replaced", "description": "Its name in the circuit.", "type": "string", "pattern": "^[a-z][a-z0-9.-]{0,80}$", "examples": ["sensor"] } } } }, "terminals": { "title": "Pins and wire colours", "description": "By terminal of the circuit.", "type": "object", "additionalProperties": { "type": "object", "additionalProperties": false, "properties": { "pin": { "title": "Pin", "description": "Number or letter of the pin.", "type": ["string", "integer"], "maxLength": 20 }, "colour": { "title": "Wire colour", "description": "Letters of IEC 60757, base colour first: RD/BU.", "type": "string", "maxLength": 12, "examples": ["RD/BU", "BN"] } } } }, "known": { "title": "What is known of this car", "description": "Values of the circuit that stand on a label, in the maker's papers, or were measured. Each may be left out; what is known narrows the rest.", "type": "array", "maxItems": 60, "items": { "type": "object", "required": ["what", "is", "from"], "additionalProperties": false, "properties": { "what": { "title": "What", "description": "In the words of the circuit or by its key.", "type": "string", "minLength": 1, "maxLength": 200, "examples": ["battery at rest", "module.reference.volts"] }, "is": { "title": "Is", "description": "A value as in a circuit file, without a tolerance within 2 %; or what a module's pin leads to.", "type": "string", "minLength": 1, "maxLength": 400, "examples": ["8 V +/- 3 %", "4.7 kohm", "battery"] }, "from": { "title": "From", "description": "maker, measured, label or other; then words of one's own.", "type": "string", "minLength": 1, "maxLength": 300, "examples": ["measured", "label: on the module"] } } } }, "harness": { "title": "Harness of this car", "description": "Connectors and splices that the sensor's wires pass, from the sensor's plug outward, and what is known of the wires. Each connector is a place to measure at, and what lies on either side of it is suspected by itself.", "type": "array", "maxItems": 24, "items": { "type": "object", "additionalProperties": false, "properties": { "connector": { "title": "Connector", "description": "Where a connector within the harness is.", "type": "string", "minLength": 1, "maxLength": 60, "examples": ["at the bulkhead"] }, "splice": { "title": "Splice", "description": "Where a splice of one wire is.", "type": "string", "minLength": 1, "maxLength": 60, "examples": ["under the tape"] }, "wire": { "title": "Wire", "description": "Name of a wire in the circuit, to say its length or size.", "type": "string", "minLength": 1, "maxLength": 60, "examples": ["signal"] }, "wires": { "title": "Wires that pass", "description": "Names of wires of the circuit that end at the sensor; of a splice one.", "type": "array", "minItems": 1, "maxItems": 24, "items": { "type": "string", "minLength": 1, "maxLength": 60 } }, "at": { "title": "At", "description": "Distance along the harness from the sensor's plug.", "type": "string", "minLength": 1, "maxLength": 40, "examples": ["1.2 m"] }, "minutes": { "title": "Minutes", "description": "To get at it the first time.", "type": "number", "minimum": 0, "maximum": 240 }, "length": { "title": "Length", "description": "Of the wire from end to end.", "type": "string", "minLength": 1, "maxLength": 40, "examples": ["3 m"] }, "size": { "title": "Size", "description": "Cross-section of the wire.", "type": "string", "minLength": 1, "maxLength": 40, "examples": ["0.5 mm2", "20 AWG"] } } } }, "simulated-fault": { "title": "Fault of the simulated vehicle", "description": "What the vehicle of this job has when it is simulated: a fault of the procedure's circuit, or healthy.", "type": "string", "pattern": "^[a-z][a-z0-9.-]{0,80}$", "examples": ["wire.signal.open"] }, "intermittent": { "title": "Intermittent", "description": "The simulated vehicle reads like a healthy one until its harness is moved or its sensor warmed.", "type": "boolean", "default": false }, "notes": { "title": "Notes", "description": "Anything else that the next person should know.", "type": "string", "maxLength": 4e3 } } };
var func2 = Object.prototype.hasOwnProperty;
var func3 = require_ucs2length().default;
var pattern0 = new RegExp("^[a-z][a-z0-9-]{0,60}$", "u");
var pattern2 = new RegExp("^[PCBU][0-3][0-9A-F]{3}$", "u");
var pattern3 = new RegExp("^(crankshaft|((intake|exhaust) )?camshaft( bank [1-4])?|(left|right) (front|rear) wheel)$", "u");
var pattern4 = new RegExp("^[a-z][a-z0-9.-]{0,80}$", "u");
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
              const err10 = { instancePath: instancePath + "/codes/" + i0, schemaPath: "#/properties/codes/items/pattern", keyword: "pattern", params: { pattern: "^[PCBU][0-3][0-9A-F]{3}$" }, message: 'must match pattern "^[PCBU][0-3][0-9A-F]{3}$"', schema: "^[PCBU][0-3][0-9A-F]{3}$", parentSchema: schema11.properties.codes.items, data: data4 };
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
    if (data.vehicle !== void 0) {
      let data6 = data.vehicle;
      if (data6 && typeof data6 == "object" && !Array.isArray(data6)) {
        for (const key1 in data6) {
          if (!(key1 === "words" || key1 === "vin" || key1 === "plate" || key1 === "odometer" || key1 === "drive")) {
            const err15 = { instancePath: instancePath + "/vehicle", schemaPath: "#/properties/vehicle/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key1 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11.properties.vehicle, data: data6 };
            if (vErrors === null) {
              vErrors = [err15];
            } else {
              vErrors.push(err15);
            }
            errors++;
          }
        }
        if (data6.words !== void 0) {
          let data7 = data6.words;
          if (typeof data7 === "string") {
            if (func3(data7) > 200) {
              const err16 = { instancePath: instancePath + "/vehicle/words", schemaPath: "#/properties/vehicle/properties/words/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema11.properties.vehicle.properties.words, data: data7 };
              if (vErrors === null) {
                vErrors = [err16];
              } else {
                vErrors.push(err16);
              }
              errors++;
            }
          } else {
            const err17 = { instancePath: instancePath + "/vehicle/words", schemaPath: "#/properties/vehicle/properties/words/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.vehicle.properties.words.type, parentSchema: schema11.properties.vehicle.properties.words, data: data7 };
            if (vErrors === null) {
              vErrors = [err17];
            } else {
              vErrors.push(err17);
            }
            errors++;
          }
        }
        if (data6.vin !== void 0) {
          let data8 = data6.vin;
          if (typeof data8 === "string") {
            if (func3(data8) > 20) {
              const err18 = { instancePath: instancePath + "/vehicle/vin", schemaPath: "#/properties/vehicle/properties/vin/maxLength", keyword: "maxLength", params: { limit: 20 }, message: "must NOT have more than 20 characters", schema: 20, parentSchema: schema11.properties.vehicle.properties.vin, data: data8 };
              if (vErrors === null) {
                vErrors = [err18];
              } else {
                vErrors.push(err18);
              }
              errors++;
            }
          } else {
            const err19 = { instancePath: instancePath + "/vehicle/vin", schemaPath: "#/properties/vehicle/properties/vin/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.vehicle.properties.vin.type, parentSchema: schema11.properties.vehicle.properties.vin, data: data8 };
            if (vErrors === null) {
              vErrors = [err19];
            } else {
              vErrors.push(err19);
            }
            errors++;
          }
        }
        if (data6.plate !== void 0) {
          let data9 = data6.plate;
          if (typeof data9 === "string") {
            if (func3(data9) > 20) {
              const err20 = { instancePath: instancePath + "/vehicle/plate", schemaPath: "#/properties/vehicle/properties/plate/maxLength", keyword: "maxLength", params: { limit: 20 }, message: "must NOT have more than 20 characters", schema: 20, parentSchema: schema11.properties.vehicle.properties.plate, data: data9 };
              if (vErrors === null) {
                vErrors = [err20];
              } else {
                vErrors.push(err20);
              }
              errors++;
            }
          } else {
            const err21 = { instancePath: instancePath + "/vehicle/plate", schemaPath: "#/properties/vehicle/properties/plate/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.vehicle.properties.plate.type, parentSchema: schema11.properties.vehicle.properties.plate, data: data9 };
            if (vErrors === null) {
              vErrors = [err21];
            } else {
              vErrors.push(err21);
            }
            errors++;
          }
        }
        if (data6.odometer !== void 0) {
          let data10 = data6.odometer;
          if (typeof data10 === "string") {
            if (func3(data10) > 30) {
              const err22 = { instancePath: instancePath + "/vehicle/odometer", schemaPath: "#/properties/vehicle/properties/odometer/maxLength", keyword: "maxLength", params: { limit: 30 }, message: "must NOT have more than 30 characters", schema: 30, parentSchema: schema11.properties.vehicle.properties.odometer, data: data10 };
              if (vErrors === null) {
                vErrors = [err22];
              } else {
                vErrors.push(err22);
              }
              errors++;
            }
          } else {
            const err23 = { instancePath: instancePath + "/vehicle/odometer", schemaPath: "#/properties/vehicle/properties/odometer/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.vehicle.properties.odometer.type, parentSchema: schema11.properties.vehicle.properties.odometer, data: data10 };
            if (vErrors === null) {
              vErrors = [err23];
            } else {
              vErrors.push(err23);
            }
            errors++;
          }
        }
        if (data6.drive !== void 0) {
          let data11 = data6.drive;
          if (!(data11 === "combustion" || data11 === "hybrid" || data11 === "electric" || data11 === "not-stated")) {
            const err24 = { instancePath: instancePath + "/vehicle/drive", schemaPath: "#/properties/vehicle/properties/drive/enum", keyword: "enum", params: { allowedValues: schema11.properties.vehicle.properties.drive.enum }, message: "must be equal to one of the allowed values", schema: schema11.properties.vehicle.properties.drive.enum, parentSchema: schema11.properties.vehicle.properties.drive, data: data11 };
            if (vErrors === null) {
              vErrors = [err24];
            } else {
              vErrors.push(err24);
            }
            errors++;
          }
        }
      } else {
        const err25 = { instancePath: instancePath + "/vehicle", schemaPath: "#/properties/vehicle/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.vehicle.type, parentSchema: schema11.properties.vehicle, data: data6 };
        if (vErrors === null) {
          vErrors = [err25];
        } else {
          vErrors.push(err25);
        }
        errors++;
      }
    }
    if (data.order !== void 0) {
      let data12 = data.order;
      if (typeof data12 === "string") {
        if (func3(data12) > 60) {
          const err26 = { instancePath: instancePath + "/order", schemaPath: "#/properties/order/maxLength", keyword: "maxLength", params: { limit: 60 }, message: "must NOT have more than 60 characters", schema: 60, parentSchema: schema11.properties.order, data: data12 };
          if (vErrors === null) {
            vErrors = [err26];
          } else {
            vErrors.push(err26);
          }
          errors++;
        }
      } else {
        const err27 = { instancePath: instancePath + "/order", schemaPath: "#/properties/order/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.order.type, parentSchema: schema11.properties.order, data: data12 };
        if (vErrors === null) {
          vErrors = [err27];
        } else {
          vErrors.push(err27);
        }
        errors++;
      }
    }
    if (data.customer !== void 0) {
      let data13 = data.customer;
      if (typeof data13 === "string") {
        if (func3(data13) > 200) {
          const err28 = { instancePath: instancePath + "/customer", schemaPath: "#/properties/customer/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema11.properties.customer, data: data13 };
          if (vErrors === null) {
            vErrors = [err28];
          } else {
            vErrors.push(err28);
          }
          errors++;
        }
      } else {
        const err29 = { instancePath: instancePath + "/customer", schemaPath: "#/properties/customer/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.customer.type, parentSchema: schema11.properties.customer, data: data13 };
        if (vErrors === null) {
          vErrors = [err29];
        } else {
          vErrors.push(err29);
        }
        errors++;
      }
    }
    if (data["earlier-repairs"] !== void 0) {
      let data14 = data["earlier-repairs"];
      if (Array.isArray(data14)) {
        if (data14.length > 40) {
          const err30 = { instancePath: instancePath + "/earlier-repairs", schemaPath: "#/properties/earlier-repairs/maxItems", keyword: "maxItems", params: { limit: 40 }, message: "must NOT have more than 40 items", schema: 40, parentSchema: schema11.properties["earlier-repairs"], data: data14 };
          if (vErrors === null) {
            vErrors = [err30];
          } else {
            vErrors.push(err30);
          }
          errors++;
        }
        const len1 = data14.length;
        for (let i1 = 0; i1 < len1; i1++) {
          let data15 = data14[i1];
          if (data15 && typeof data15 == "object" && !Array.isArray(data15)) {
            if (data15.words === void 0) {
              const err31 = { instancePath: instancePath + "/earlier-repairs/" + i1, schemaPath: "#/properties/earlier-repairs/items/required", keyword: "required", params: { missingProperty: "words" }, message: "must have required property 'words'", schema: schema11.properties["earlier-repairs"].items.required, parentSchema: schema11.properties["earlier-repairs"].items, data: data15 };
              if (vErrors === null) {
                vErrors = [err31];
              } else {
                vErrors.push(err31);
              }
              errors++;
            }
            for (const key2 in data15) {
              if (!(key2 === "words" || key2 === "part")) {
                const err32 = { instancePath: instancePath + "/earlier-repairs/" + i1, schemaPath: "#/properties/earlier-repairs/items/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key2 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11.properties["earlier-repairs"].items, data: data15 };
                if (vErrors === null) {
                  vErrors = [err32];
                } else {
                  vErrors.push(err32);
                }
                errors++;
              }
            }
            if (data15.words !== void 0) {
              let data16 = data15.words;
              if (typeof data16 === "string") {
                if (func3(data16) > 300) {
                  const err33 = { instancePath: instancePath + "/earlier-repairs/" + i1 + "/words", schemaPath: "#/properties/earlier-repairs/items/properties/words/maxLength", keyword: "maxLength", params: { limit: 300 }, message: "must NOT have more than 300 characters", schema: 300, parentSchema: schema11.properties["earlier-repairs"].items.properties.words, data: data16 };
                  if (vErrors === null) {
                    vErrors = [err33];
                  } else {
                    vErrors.push(err33);
                  }
                  errors++;
                }
                if (func3(data16) < 1) {
                  const err34 = { instancePath: instancePath + "/earlier-repairs/" + i1 + "/words", schemaPath: "#/properties/earlier-repairs/items/properties/words/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties["earlier-repairs"].items.properties.words, data: data16 };
                  if (vErrors === null) {
                    vErrors = [err34];
                  } else {
                    vErrors.push(err34);
                  }
                  errors++;
                }
              } else {
                const err35 = { instancePath: instancePath + "/earlier-repairs/" + i1 + "/words", schemaPath: "#/properties/earlier-repairs/items/properties/words/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties["earlier-repairs"].items.properties.words.type, parentSchema: schema11.properties["earlier-repairs"].items.properties.words, data: data16 };
                if (vErrors === null) {
                  vErrors = [err35];
                } else {
                  vErrors.push(err35);
                }
                errors++;
              }
            }
            if (data15.part !== void 0) {
              let data17 = data15.part;
              if (typeof data17 === "string") {
                if (!pattern4.test(data17)) {
                  const err36 = { instancePath: instancePath + "/earlier-repairs/" + i1 + "/part", schemaPath: "#/properties/earlier-repairs/items/properties/part/pattern", keyword: "pattern", params: { pattern: "^[a-z][a-z0-9.-]{0,80}$" }, message: 'must match pattern "^[a-z][a-z0-9.-]{0,80}$"', schema: "^[a-z][a-z0-9.-]{0,80}$", parentSchema: schema11.properties["earlier-repairs"].items.properties.part, data: data17 };
                  if (vErrors === null) {
                    vErrors = [err36];
                  } else {
                    vErrors.push(err36);
                  }
                  errors++;
                }
              } else {
                const err37 = { instancePath: instancePath + "/earlier-repairs/" + i1 + "/part", schemaPath: "#/properties/earlier-repairs/items/properties/part/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties["earlier-repairs"].items.properties.part.type, parentSchema: schema11.properties["earlier-repairs"].items.properties.part, data: data17 };
                if (vErrors === null) {
                  vErrors = [err37];
                } else {
                  vErrors.push(err37);
                }
                errors++;
              }
            }
          } else {
            const err38 = { instancePath: instancePath + "/earlier-repairs/" + i1, schemaPath: "#/properties/earlier-repairs/items/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties["earlier-repairs"].items.type, parentSchema: schema11.properties["earlier-repairs"].items, data: data15 };
            if (vErrors === null) {
              vErrors = [err38];
            } else {
              vErrors.push(err38);
            }
            errors++;
          }
        }
      } else {
        const err39 = { instancePath: instancePath + "/earlier-repairs", schemaPath: "#/properties/earlier-repairs/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema11.properties["earlier-repairs"].type, parentSchema: schema11.properties["earlier-repairs"], data: data14 };
        if (vErrors === null) {
          vErrors = [err39];
        } else {
          vErrors.push(err39);
        }
        errors++;
      }
    }
    if (data.terminals !== void 0) {
      let data18 = data.terminals;
      if (data18 && typeof data18 == "object" && !Array.isArray(data18)) {
        for (const key3 in data18) {
          let data19 = data18[key3];
          if (data19 && typeof data19 == "object" && !Array.isArray(data19)) {
            for (const key4 in data19) {
              if (!(key4 === "pin" || key4 === "colour")) {
                const err40 = { instancePath: instancePath + "/terminals/" + key3.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/properties/terminals/additionalProperties/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key4 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11.properties.terminals.additionalProperties, data: data19 };
                if (vErrors === null) {
                  vErrors = [err40];
                } else {
                  vErrors.push(err40);
                }
                errors++;
              }
            }
            if (data19.pin !== void 0) {
              let data20 = data19.pin;
              if (typeof data20 !== "string" && !(typeof data20 == "number" && (!(data20 % 1) && !isNaN(data20)) && isFinite(data20))) {
                const err41 = { instancePath: instancePath + "/terminals/" + key3.replace(/~/g, "~0").replace(/\//g, "~1") + "/pin", schemaPath: "#/properties/terminals/additionalProperties/properties/pin/type", keyword: "type", params: { type: schema11.properties.terminals.additionalProperties.properties.pin.type }, message: "must be string,integer", schema: schema11.properties.terminals.additionalProperties.properties.pin.type, parentSchema: schema11.properties.terminals.additionalProperties.properties.pin, data: data20 };
                if (vErrors === null) {
                  vErrors = [err41];
                } else {
                  vErrors.push(err41);
                }
                errors++;
              }
              if (typeof data20 === "string") {
                if (func3(data20) > 20) {
                  const err42 = { instancePath: instancePath + "/terminals/" + key3.replace(/~/g, "~0").replace(/\//g, "~1") + "/pin", schemaPath: "#/properties/terminals/additionalProperties/properties/pin/maxLength", keyword: "maxLength", params: { limit: 20 }, message: "must NOT have more than 20 characters", schema: 20, parentSchema: schema11.properties.terminals.additionalProperties.properties.pin, data: data20 };
                  if (vErrors === null) {
                    vErrors = [err42];
                  } else {
                    vErrors.push(err42);
                  }
                  errors++;
                }
              }
            }
            if (data19.colour !== void 0) {
              let data21 = data19.colour;
              if (typeof data21 === "string") {
                if (func3(data21) > 12) {
                  const err43 = { instancePath: instancePath + "/terminals/" + key3.replace(/~/g, "~0").replace(/\//g, "~1") + "/colour", schemaPath: "#/properties/terminals/additionalProperties/properties/colour/maxLength", keyword: "maxLength", params: { limit: 12 }, message: "must NOT have more than 12 characters", schema: 12, parentSchema: schema11.properties.terminals.additionalProperties.properties.colour, data: data21 };
                  if (vErrors === null) {
                    vErrors = [err43];
                  } else {
                    vErrors.push(err43);
                  }
                  errors++;
                }
              } else {
                const err44 = { instancePath: instancePath + "/terminals/" + key3.replace(/~/g, "~0").replace(/\//g, "~1") + "/colour", schemaPath: "#/properties/terminals/additionalProperties/properties/colour/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.terminals.additionalProperties.properties.colour.type, parentSchema: schema11.properties.terminals.additionalProperties.properties.colour, data: data21 };
                if (vErrors === null) {
                  vErrors = [err44];
                } else {
                  vErrors.push(err44);
                }
                errors++;
              }
            }
          } else {
            const err45 = { instancePath: instancePath + "/terminals/" + key3.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/properties/terminals/additionalProperties/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.terminals.additionalProperties.type, parentSchema: schema11.properties.terminals.additionalProperties, data: data19 };
            if (vErrors === null) {
              vErrors = [err45];
            } else {
              vErrors.push(err45);
            }
            errors++;
          }
        }
      } else {
        const err46 = { instancePath: instancePath + "/terminals", schemaPath: "#/properties/terminals/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.terminals.type, parentSchema: schema11.properties.terminals, data: data18 };
        if (vErrors === null) {
          vErrors = [err46];
        } else {
          vErrors.push(err46);
        }
        errors++;
      }
    }
    if (data.known !== void 0) {
      let data22 = data.known;
      if (Array.isArray(data22)) {
        if (data22.length > 60) {
          const err47 = { instancePath: instancePath + "/known", schemaPath: "#/properties/known/maxItems", keyword: "maxItems", params: { limit: 60 }, message: "must NOT have more than 60 items", schema: 60, parentSchema: schema11.properties.known, data: data22 };
          if (vErrors === null) {
            vErrors = [err47];
          } else {
            vErrors.push(err47);
          }
          errors++;
        }
        const len2 = data22.length;
        for (let i2 = 0; i2 < len2; i2++) {
          let data23 = data22[i2];
          if (data23 && typeof data23 == "object" && !Array.isArray(data23)) {
            if (data23.what === void 0) {
              const err48 = { instancePath: instancePath + "/known/" + i2, schemaPath: "#/properties/known/items/required", keyword: "required", params: { missingProperty: "what" }, message: "must have required property 'what'", schema: schema11.properties.known.items.required, parentSchema: schema11.properties.known.items, data: data23 };
              if (vErrors === null) {
                vErrors = [err48];
              } else {
                vErrors.push(err48);
              }
              errors++;
            }
            if (data23.is === void 0) {
              const err49 = { instancePath: instancePath + "/known/" + i2, schemaPath: "#/properties/known/items/required", keyword: "required", params: { missingProperty: "is" }, message: "must have required property 'is'", schema: schema11.properties.known.items.required, parentSchema: schema11.properties.known.items, data: data23 };
              if (vErrors === null) {
                vErrors = [err49];
              } else {
                vErrors.push(err49);
              }
              errors++;
            }
            if (data23.from === void 0) {
              const err50 = { instancePath: instancePath + "/known/" + i2, schemaPath: "#/properties/known/items/required", keyword: "required", params: { missingProperty: "from" }, message: "must have required property 'from'", schema: schema11.properties.known.items.required, parentSchema: schema11.properties.known.items, data: data23 };
              if (vErrors === null) {
                vErrors = [err50];
              } else {
                vErrors.push(err50);
              }
              errors++;
            }
            for (const key5 in data23) {
              if (!(key5 === "what" || key5 === "is" || key5 === "from")) {
                const err51 = { instancePath: instancePath + "/known/" + i2, schemaPath: "#/properties/known/items/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key5 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11.properties.known.items, data: data23 };
                if (vErrors === null) {
                  vErrors = [err51];
                } else {
                  vErrors.push(err51);
                }
                errors++;
              }
            }
            if (data23.what !== void 0) {
              let data24 = data23.what;
              if (typeof data24 === "string") {
                if (func3(data24) > 200) {
                  const err52 = { instancePath: instancePath + "/known/" + i2 + "/what", schemaPath: "#/properties/known/items/properties/what/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema11.properties.known.items.properties.what, data: data24 };
                  if (vErrors === null) {
                    vErrors = [err52];
                  } else {
                    vErrors.push(err52);
                  }
                  errors++;
                }
                if (func3(data24) < 1) {
                  const err53 = { instancePath: instancePath + "/known/" + i2 + "/what", schemaPath: "#/properties/known/items/properties/what/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.known.items.properties.what, data: data24 };
                  if (vErrors === null) {
                    vErrors = [err53];
                  } else {
                    vErrors.push(err53);
                  }
                  errors++;
                }
              } else {
                const err54 = { instancePath: instancePath + "/known/" + i2 + "/what", schemaPath: "#/properties/known/items/properties/what/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.known.items.properties.what.type, parentSchema: schema11.properties.known.items.properties.what, data: data24 };
                if (vErrors === null) {
                  vErrors = [err54];
                } else {
                  vErrors.push(err54);
                }
                errors++;
              }
            }
            if (data23.is !== void 0) {
              let data25 = data23.is;
              if (typeof data25 === "string") {
                if (func3(data25) > 400) {
                  const err55 = { instancePath: instancePath + "/known/" + i2 + "/is", schemaPath: "#/properties/known/items/properties/is/maxLength", keyword: "maxLength", params: { limit: 400 }, message: "must NOT have more than 400 characters", schema: 400, parentSchema: schema11.properties.known.items.properties.is, data: data25 };
                  if (vErrors === null) {
                    vErrors = [err55];
                  } else {
                    vErrors.push(err55);
                  }
                  errors++;
                }
                if (func3(data25) < 1) {
                  const err56 = { instancePath: instancePath + "/known/" + i2 + "/is", schemaPath: "#/properties/known/items/properties/is/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.known.items.properties.is, data: data25 };
                  if (vErrors === null) {
                    vErrors = [err56];
                  } else {
                    vErrors.push(err56);
                  }
                  errors++;
                }
              } else {
                const err57 = { instancePath: instancePath + "/known/" + i2 + "/is", schemaPath: "#/properties/known/items/properties/is/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.known.items.properties.is.type, parentSchema: schema11.properties.known.items.properties.is, data: data25 };
                if (vErrors === null) {
                  vErrors = [err57];
                } else {
                  vErrors.push(err57);
                }
                errors++;
              }
            }
            if (data23.from !== void 0) {
              let data26 = data23.from;
              if (typeof data26 === "string") {
                if (func3(data26) > 300) {
                  const err58 = { instancePath: instancePath + "/known/" + i2 + "/from", schemaPath: "#/properties/known/items/properties/from/maxLength", keyword: "maxLength", params: { limit: 300 }, message: "must NOT have more than 300 characters", schema: 300, parentSchema: schema11.properties.known.items.properties.from, data: data26 };
                  if (vErrors === null) {
                    vErrors = [err58];
                  } else {
                    vErrors.push(err58);
                  }
                  errors++;
                }
                if (func3(data26) < 1) {
                  const err59 = { instancePath: instancePath + "/known/" + i2 + "/from", schemaPath: "#/properties/known/items/properties/from/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.known.items.properties.from, data: data26 };
                  if (vErrors === null) {
                    vErrors = [err59];
                  } else {
                    vErrors.push(err59);
                  }
                  errors++;
                }
              } else {
                const err60 = { instancePath: instancePath + "/known/" + i2 + "/from", schemaPath: "#/properties/known/items/properties/from/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.known.items.properties.from.type, parentSchema: schema11.properties.known.items.properties.from, data: data26 };
                if (vErrors === null) {
                  vErrors = [err60];
                } else {
                  vErrors.push(err60);
                }
                errors++;
              }
            }
          } else {
            const err61 = { instancePath: instancePath + "/known/" + i2, schemaPath: "#/properties/known/items/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.known.items.type, parentSchema: schema11.properties.known.items, data: data23 };
            if (vErrors === null) {
              vErrors = [err61];
            } else {
              vErrors.push(err61);
            }
            errors++;
          }
        }
      } else {
        const err62 = { instancePath: instancePath + "/known", schemaPath: "#/properties/known/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema11.properties.known.type, parentSchema: schema11.properties.known, data: data22 };
        if (vErrors === null) {
          vErrors = [err62];
        } else {
          vErrors.push(err62);
        }
        errors++;
      }
    }
    if (data.harness !== void 0) {
      let data27 = data.harness;
      if (Array.isArray(data27)) {
        if (data27.length > 24) {
          const err63 = { instancePath: instancePath + "/harness", schemaPath: "#/properties/harness/maxItems", keyword: "maxItems", params: { limit: 24 }, message: "must NOT have more than 24 items", schema: 24, parentSchema: schema11.properties.harness, data: data27 };
          if (vErrors === null) {
            vErrors = [err63];
          } else {
            vErrors.push(err63);
          }
          errors++;
        }
        const len3 = data27.length;
        for (let i3 = 0; i3 < len3; i3++) {
          let data28 = data27[i3];
          if (data28 && typeof data28 == "object" && !Array.isArray(data28)) {
            for (const key6 in data28) {
              if (!(key6 === "connector" || key6 === "splice" || key6 === "wire" || key6 === "wires" || key6 === "at" || key6 === "minutes" || key6 === "length" || key6 === "size")) {
                const err64 = { instancePath: instancePath + "/harness/" + i3, schemaPath: "#/properties/harness/items/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key6 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11.properties.harness.items, data: data28 };
                if (vErrors === null) {
                  vErrors = [err64];
                } else {
                  vErrors.push(err64);
                }
                errors++;
              }
            }
            if (data28.connector !== void 0) {
              let data29 = data28.connector;
              if (typeof data29 === "string") {
                if (func3(data29) > 60) {
                  const err65 = { instancePath: instancePath + "/harness/" + i3 + "/connector", schemaPath: "#/properties/harness/items/properties/connector/maxLength", keyword: "maxLength", params: { limit: 60 }, message: "must NOT have more than 60 characters", schema: 60, parentSchema: schema11.properties.harness.items.properties.connector, data: data29 };
                  if (vErrors === null) {
                    vErrors = [err65];
                  } else {
                    vErrors.push(err65);
                  }
                  errors++;
                }
                if (func3(data29) < 1) {
                  const err66 = { instancePath: instancePath + "/harness/" + i3 + "/connector", schemaPath: "#/properties/harness/items/properties/connector/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.harness.items.properties.connector, data: data29 };
                  if (vErrors === null) {
                    vErrors = [err66];
                  } else {
                    vErrors.push(err66);
                  }
                  errors++;
                }
              } else {
                const err67 = { instancePath: instancePath + "/harness/" + i3 + "/connector", schemaPath: "#/properties/harness/items/properties/connector/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.harness.items.properties.connector.type, parentSchema: schema11.properties.harness.items.properties.connector, data: data29 };
                if (vErrors === null) {
                  vErrors = [err67];
                } else {
                  vErrors.push(err67);
                }
                errors++;
              }
            }
            if (data28.splice !== void 0) {
              let data30 = data28.splice;
              if (typeof data30 === "string") {
                if (func3(data30) > 60) {
                  const err68 = { instancePath: instancePath + "/harness/" + i3 + "/splice", schemaPath: "#/properties/harness/items/properties/splice/maxLength", keyword: "maxLength", params: { limit: 60 }, message: "must NOT have more than 60 characters", schema: 60, parentSchema: schema11.properties.harness.items.properties.splice, data: data30 };
                  if (vErrors === null) {
                    vErrors = [err68];
                  } else {
                    vErrors.push(err68);
                  }
                  errors++;
                }
                if (func3(data30) < 1) {
                  const err69 = { instancePath: instancePath + "/harness/" + i3 + "/splice", schemaPath: "#/properties/harness/items/properties/splice/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.harness.items.properties.splice, data: data30 };
                  if (vErrors === null) {
                    vErrors = [err69];
                  } else {
                    vErrors.push(err69);
                  }
                  errors++;
                }
              } else {
                const err70 = { instancePath: instancePath + "/harness/" + i3 + "/splice", schemaPath: "#/properties/harness/items/properties/splice/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.harness.items.properties.splice.type, parentSchema: schema11.properties.harness.items.properties.splice, data: data30 };
                if (vErrors === null) {
                  vErrors = [err70];
                } else {
                  vErrors.push(err70);
                }
                errors++;
              }
            }
            if (data28.wire !== void 0) {
              let data31 = data28.wire;
              if (typeof data31 === "string") {
                if (func3(data31) > 60) {
                  const err71 = { instancePath: instancePath + "/harness/" + i3 + "/wire", schemaPath: "#/properties/harness/items/properties/wire/maxLength", keyword: "maxLength", params: { limit: 60 }, message: "must NOT have more than 60 characters", schema: 60, parentSchema: schema11.properties.harness.items.properties.wire, data: data31 };
                  if (vErrors === null) {
                    vErrors = [err71];
                  } else {
                    vErrors.push(err71);
                  }
                  errors++;
                }
                if (func3(data31) < 1) {
                  const err72 = { instancePath: instancePath + "/harness/" + i3 + "/wire", schemaPath: "#/properties/harness/items/properties/wire/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.harness.items.properties.wire, data: data31 };
                  if (vErrors === null) {
                    vErrors = [err72];
                  } else {
                    vErrors.push(err72);
                  }
                  errors++;
                }
              } else {
                const err73 = { instancePath: instancePath + "/harness/" + i3 + "/wire", schemaPath: "#/properties/harness/items/properties/wire/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.harness.items.properties.wire.type, parentSchema: schema11.properties.harness.items.properties.wire, data: data31 };
                if (vErrors === null) {
                  vErrors = [err73];
                } else {
                  vErrors.push(err73);
                }
                errors++;
              }
            }
            if (data28.wires !== void 0) {
              let data32 = data28.wires;
              if (Array.isArray(data32)) {
                if (data32.length > 24) {
                  const err74 = { instancePath: instancePath + "/harness/" + i3 + "/wires", schemaPath: "#/properties/harness/items/properties/wires/maxItems", keyword: "maxItems", params: { limit: 24 }, message: "must NOT have more than 24 items", schema: 24, parentSchema: schema11.properties.harness.items.properties.wires, data: data32 };
                  if (vErrors === null) {
                    vErrors = [err74];
                  } else {
                    vErrors.push(err74);
                  }
                  errors++;
                }
                if (data32.length < 1) {
                  const err75 = { instancePath: instancePath + "/harness/" + i3 + "/wires", schemaPath: "#/properties/harness/items/properties/wires/minItems", keyword: "minItems", params: { limit: 1 }, message: "must NOT have fewer than 1 items", schema: 1, parentSchema: schema11.properties.harness.items.properties.wires, data: data32 };
                  if (vErrors === null) {
                    vErrors = [err75];
                  } else {
                    vErrors.push(err75);
                  }
                  errors++;
                }
                const len4 = data32.length;
                for (let i4 = 0; i4 < len4; i4++) {
                  let data33 = data32[i4];
                  if (typeof data33 === "string") {
                    if (func3(data33) > 60) {
                      const err76 = { instancePath: instancePath + "/harness/" + i3 + "/wires/" + i4, schemaPath: "#/properties/harness/items/properties/wires/items/maxLength", keyword: "maxLength", params: { limit: 60 }, message: "must NOT have more than 60 characters", schema: 60, parentSchema: schema11.properties.harness.items.properties.wires.items, data: data33 };
                      if (vErrors === null) {
                        vErrors = [err76];
                      } else {
                        vErrors.push(err76);
                      }
                      errors++;
                    }
                    if (func3(data33) < 1) {
                      const err77 = { instancePath: instancePath + "/harness/" + i3 + "/wires/" + i4, schemaPath: "#/properties/harness/items/properties/wires/items/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.harness.items.properties.wires.items, data: data33 };
                      if (vErrors === null) {
                        vErrors = [err77];
                      } else {
                        vErrors.push(err77);
                      }
                      errors++;
                    }
                  } else {
                    const err78 = { instancePath: instancePath + "/harness/" + i3 + "/wires/" + i4, schemaPath: "#/properties/harness/items/properties/wires/items/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.harness.items.properties.wires.items.type, parentSchema: schema11.properties.harness.items.properties.wires.items, data: data33 };
                    if (vErrors === null) {
                      vErrors = [err78];
                    } else {
                      vErrors.push(err78);
                    }
                    errors++;
                  }
                }
              } else {
                const err79 = { instancePath: instancePath + "/harness/" + i3 + "/wires", schemaPath: "#/properties/harness/items/properties/wires/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema11.properties.harness.items.properties.wires.type, parentSchema: schema11.properties.harness.items.properties.wires, data: data32 };
                if (vErrors === null) {
                  vErrors = [err79];
                } else {
                  vErrors.push(err79);
                }
                errors++;
              }
            }
            if (data28.at !== void 0) {
              let data34 = data28.at;
              if (typeof data34 === "string") {
                if (func3(data34) > 40) {
                  const err80 = { instancePath: instancePath + "/harness/" + i3 + "/at", schemaPath: "#/properties/harness/items/properties/at/maxLength", keyword: "maxLength", params: { limit: 40 }, message: "must NOT have more than 40 characters", schema: 40, parentSchema: schema11.properties.harness.items.properties.at, data: data34 };
                  if (vErrors === null) {
                    vErrors = [err80];
                  } else {
                    vErrors.push(err80);
                  }
                  errors++;
                }
                if (func3(data34) < 1) {
                  const err81 = { instancePath: instancePath + "/harness/" + i3 + "/at", schemaPath: "#/properties/harness/items/properties/at/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.harness.items.properties.at, data: data34 };
                  if (vErrors === null) {
                    vErrors = [err81];
                  } else {
                    vErrors.push(err81);
                  }
                  errors++;
                }
              } else {
                const err82 = { instancePath: instancePath + "/harness/" + i3 + "/at", schemaPath: "#/properties/harness/items/properties/at/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.harness.items.properties.at.type, parentSchema: schema11.properties.harness.items.properties.at, data: data34 };
                if (vErrors === null) {
                  vErrors = [err82];
                } else {
                  vErrors.push(err82);
                }
                errors++;
              }
            }
            if (data28.minutes !== void 0) {
              let data35 = data28.minutes;
              if (typeof data35 == "number" && isFinite(data35)) {
                if (data35 > 240 || isNaN(data35)) {
                  const err83 = { instancePath: instancePath + "/harness/" + i3 + "/minutes", schemaPath: "#/properties/harness/items/properties/minutes/maximum", keyword: "maximum", params: { comparison: "<=", limit: 240 }, message: "must be <= 240", schema: 240, parentSchema: schema11.properties.harness.items.properties.minutes, data: data35 };
                  if (vErrors === null) {
                    vErrors = [err83];
                  } else {
                    vErrors.push(err83);
                  }
                  errors++;
                }
                if (data35 < 0 || isNaN(data35)) {
                  const err84 = { instancePath: instancePath + "/harness/" + i3 + "/minutes", schemaPath: "#/properties/harness/items/properties/minutes/minimum", keyword: "minimum", params: { comparison: ">=", limit: 0 }, message: "must be >= 0", schema: 0, parentSchema: schema11.properties.harness.items.properties.minutes, data: data35 };
                  if (vErrors === null) {
                    vErrors = [err84];
                  } else {
                    vErrors.push(err84);
                  }
                  errors++;
                }
              } else {
                const err85 = { instancePath: instancePath + "/harness/" + i3 + "/minutes", schemaPath: "#/properties/harness/items/properties/minutes/type", keyword: "type", params: { type: "number" }, message: "must be number", schema: schema11.properties.harness.items.properties.minutes.type, parentSchema: schema11.properties.harness.items.properties.minutes, data: data35 };
                if (vErrors === null) {
                  vErrors = [err85];
                } else {
                  vErrors.push(err85);
                }
                errors++;
              }
            }
            if (data28.length !== void 0) {
              let data36 = data28.length;
              if (typeof data36 === "string") {
                if (func3(data36) > 40) {
                  const err86 = { instancePath: instancePath + "/harness/" + i3 + "/length", schemaPath: "#/properties/harness/items/properties/length/maxLength", keyword: "maxLength", params: { limit: 40 }, message: "must NOT have more than 40 characters", schema: 40, parentSchema: schema11.properties.harness.items.properties.length, data: data36 };
                  if (vErrors === null) {
                    vErrors = [err86];
                  } else {
                    vErrors.push(err86);
                  }
                  errors++;
                }
                if (func3(data36) < 1) {
                  const err87 = { instancePath: instancePath + "/harness/" + i3 + "/length", schemaPath: "#/properties/harness/items/properties/length/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.harness.items.properties.length, data: data36 };
                  if (vErrors === null) {
                    vErrors = [err87];
                  } else {
                    vErrors.push(err87);
                  }
                  errors++;
                }
              } else {
                const err88 = { instancePath: instancePath + "/harness/" + i3 + "/length", schemaPath: "#/properties/harness/items/properties/length/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.harness.items.properties.length.type, parentSchema: schema11.properties.harness.items.properties.length, data: data36 };
                if (vErrors === null) {
                  vErrors = [err88];
                } else {
                  vErrors.push(err88);
                }
                errors++;
              }
            }
            if (data28.size !== void 0) {
              let data37 = data28.size;
              if (typeof data37 === "string") {
                if (func3(data37) > 40) {
                  const err89 = { instancePath: instancePath + "/harness/" + i3 + "/size", schemaPath: "#/properties/harness/items/properties/size/maxLength", keyword: "maxLength", params: { limit: 40 }, message: "must NOT have more than 40 characters", schema: 40, parentSchema: schema11.properties.harness.items.properties.size, data: data37 };
                  if (vErrors === null) {
                    vErrors = [err89];
                  } else {
                    vErrors.push(err89);
                  }
                  errors++;
                }
                if (func3(data37) < 1) {
                  const err90 = { instancePath: instancePath + "/harness/" + i3 + "/size", schemaPath: "#/properties/harness/items/properties/size/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.harness.items.properties.size, data: data37 };
                  if (vErrors === null) {
                    vErrors = [err90];
                  } else {
                    vErrors.push(err90);
                  }
                  errors++;
                }
              } else {
                const err91 = { instancePath: instancePath + "/harness/" + i3 + "/size", schemaPath: "#/properties/harness/items/properties/size/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.harness.items.properties.size.type, parentSchema: schema11.properties.harness.items.properties.size, data: data37 };
                if (vErrors === null) {
                  vErrors = [err91];
                } else {
                  vErrors.push(err91);
                }
                errors++;
              }
            }
          } else {
            const err92 = { instancePath: instancePath + "/harness/" + i3, schemaPath: "#/properties/harness/items/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.harness.items.type, parentSchema: schema11.properties.harness.items, data: data28 };
            if (vErrors === null) {
              vErrors = [err92];
            } else {
              vErrors.push(err92);
            }
            errors++;
          }
        }
      } else {
        const err93 = { instancePath: instancePath + "/harness", schemaPath: "#/properties/harness/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema11.properties.harness.type, parentSchema: schema11.properties.harness, data: data27 };
        if (vErrors === null) {
          vErrors = [err93];
        } else {
          vErrors.push(err93);
        }
        errors++;
      }
    }
    if (data["simulated-fault"] !== void 0) {
      let data38 = data["simulated-fault"];
      if (typeof data38 === "string") {
        if (!pattern4.test(data38)) {
          const err94 = { instancePath: instancePath + "/simulated-fault", schemaPath: "#/properties/simulated-fault/pattern", keyword: "pattern", params: { pattern: "^[a-z][a-z0-9.-]{0,80}$" }, message: 'must match pattern "^[a-z][a-z0-9.-]{0,80}$"', schema: "^[a-z][a-z0-9.-]{0,80}$", parentSchema: schema11.properties["simulated-fault"], data: data38 };
          if (vErrors === null) {
            vErrors = [err94];
          } else {
            vErrors.push(err94);
          }
          errors++;
        }
      } else {
        const err95 = { instancePath: instancePath + "/simulated-fault", schemaPath: "#/properties/simulated-fault/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties["simulated-fault"].type, parentSchema: schema11.properties["simulated-fault"], data: data38 };
        if (vErrors === null) {
          vErrors = [err95];
        } else {
          vErrors.push(err95);
        }
        errors++;
      }
    }
    if (data.intermittent !== void 0) {
      let data39 = data.intermittent;
      if (typeof data39 !== "boolean") {
        const err96 = { instancePath: instancePath + "/intermittent", schemaPath: "#/properties/intermittent/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean", schema: schema11.properties.intermittent.type, parentSchema: schema11.properties.intermittent, data: data39 };
        if (vErrors === null) {
          vErrors = [err96];
        } else {
          vErrors.push(err96);
        }
        errors++;
      }
    }
    if (data.notes !== void 0) {
      let data40 = data.notes;
      if (typeof data40 === "string") {
        if (func3(data40) > 4e3) {
          const err97 = { instancePath: instancePath + "/notes", schemaPath: "#/properties/notes/maxLength", keyword: "maxLength", params: { limit: 4e3 }, message: "must NOT have more than 4000 characters", schema: 4e3, parentSchema: schema11.properties.notes, data: data40 };
          if (vErrors === null) {
            vErrors = [err97];
          } else {
            vErrors.push(err97);
          }
          errors++;
        }
      } else {
        const err98 = { instancePath: instancePath + "/notes", schemaPath: "#/properties/notes/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.notes.type, parentSchema: schema11.properties.notes, data: data40 };
        if (vErrors === null) {
          vErrors = [err98];
        } else {
          vErrors.push(err98);
        }
        errors++;
      }
    }
  } else {
    const err99 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.type, parentSchema: schema11, data };
    if (vErrors === null) {
      vErrors = [err99];
    } else {
      vErrors.push(err99);
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
