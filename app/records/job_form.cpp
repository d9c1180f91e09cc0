#include "app/records/job_form.h"

#include "app/records/form_parts.h"

namespace carriageway {

void describe_job(Form& form, Job& job) {
    form.text("name", job.name, any_name);
    form.object("press", [&] { describe_press(form, job.press); });
    const auto numbers = [&](std::initializer_list<Field> fields) {
        for (const Field field : fields) {
            describe_number(form, number_of(job, nullptr, field), field);
        }
    };
    form.object("platen", [&] {
        numbers({Field::platen_width, Field::platen_length, Field::platen_offset_x,
                 Field::platen_offset_y});
    });
    form.object("wishes", [&] { numbers({Field::run_past, Field::side_overlap}); });
    describe_part(form, "garment", job.garment, [&] {
        describe_choice(form, "kind", job.garment.kind, garments);
        numbers({Field::garment_compressed});
        form.text("fabric", job.garment.name, any_note);
    });
    describe_part(form, "registration", job.registration, [&] {
        numbers({Field::registration_tolerance});
        describe_whole(form, "base_head", job.registration.base, {0, most_head_id});
    });
    describe_part(form, "run", job.run, [&] {
        numbers({Field::pieces, Field::flash_dwell, Field::cycle});
        describe_noted(form, job.run.flash_temperature, Field::flash_temperature);
        describe_noted(form, job.run.dryer_temperature, Field::dryer_temperature);
        describe_noted(form, job.run.dryer_time, Field::dryer_time);
    });
    describe_part(form, "handling", job.handling, [&] {
        numbers({Field::load_time, Field::unload_time});
    });
    describe_part(form, "assumed", job.assumed, [&] {
        numbers({Field::friction, Field::mesh_stiffness, Field::transfer_share,
                 Field::second_stroke_share, Field::ink_in_screen, Field::waste_share});
    });
    describe_part(form, "levelling", job.height_readings,
                  [&] { describe_height_readings(form, job.height_readings); });
    describe_uses(form, job.uses, {2, most_stations, true});
    describe_list(form, "heads", job.heads, {0, most_stations},
                  [&](Head& head) { form.object("", [&] { describe_head_members(form, head); }); });
    describe_walk(form, "walk", job.walk);
    describe_part(form, "record", job.record, [&] { describe_record_members(form, job.record); });
}

std::string path_of(Field field, std::size_t head_index) {
    const FieldInfo& info = info_of(field);
    switch (info.owner) {
        case FieldOwner::head:
            return "heads[" + std::to_string(head_index) + "]." + info.key;
        case FieldOwner::press:
            return std::string("press.") + info.key;
        case FieldOwner::job:
            break;
    }
    return info.key;
}

const char* station_use_key(StationUse use) {
    return station_uses.at(static_cast<std::size_t>(use));
}

} // namespace carriageway
