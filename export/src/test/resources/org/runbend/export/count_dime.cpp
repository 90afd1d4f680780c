// Reads DXF files with dime and prints how many entities lie on each layer of model space, and how many on paper.
#include <cstdio>
#include <map>
#include <string>

#include <dime/Input.h>
#include <dime/Model.h>
#include <dime/State.h>
#include <dime/entities/Entity.h>

struct Counts {
    std::map<std::string, int> model;
    int paper = 0;
};

static bool count(const dimeState*, dimeEntity* entity, void* to) {
    Counts* counts = static_cast<Counts*>(to);
    if (entity->getEntityFlags() & FLAG_PAPERSPACE) {
        counts->paper++;
    } else {
        counts->model[entity->getLayerName()]++;
    }
    return true;
}

int main(int files, char** names) {
    for (int i = 1; i < files; i++) {
        dimeInput in;
        dimeModel model;
        if (!in.setFile(names[i]) || !model.read(&in)) {
            std::printf("refused %s\n", names[i]);
            return 1;
        }
        Counts counts;
        model.traverseEntities(count, &counts, false, false, false);
        for (const auto& layer : counts.model) {
            std::printf("count %s %d\n", layer.first.c_str(), layer.second);
        }
        std::printf("paper %d\n", counts.paper);
    }
    return 0;
}
